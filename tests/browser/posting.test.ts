import { randomBytes } from 'node:crypto';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, askPage, STANDING_EXAMPLE, textOf } from './ask-page';
import { type Look, openPage } from './harness/open-page';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const PASSWORD = 'solder and rosin at dusk';
/** One contributor for the whole file: accounts are limited by address. */
const NAME = `poster-${randomBytes(4).toString('hex')}`;
/** Something that no other run has written: the same content twice would be one submission. */
const unique = () => `Seen again ${randomBytes(3).toString('hex').replace(/\d/g, 'x')} after the soak.`;

let isMade = false;
/** Fills the form of the page shown, and waits until it has led on. */
async function enter(page: Page): Promise<void> {
  if (!isMade) {
    await page.getByRole('link', { name: 'Sign up' }).click();
    await page.waitForURL(/\/sign-up/);
  }
  await page.getByLabel('Name', { exact: true }).fill(NAME);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: isMade ? 'Sign in' : 'Sign up' }).click();
  await page.locator('.site-account', { hasText: NAME }).waitFor();
  isMade = true;
}

const formOf = (page: Page) => page.locator('.post-form[data-ready="true"]');

/** The form, signed in or not. */
async function postPage(look: Look = {}, signedIn = false): Promise<Page> {
  const page = await openPage(look);
  await page.goto(addressOf(signedIn ? '/sign-in?next=/post' : '/post'));
  if (signedIn) await enter(page);
  await formOf(page).waitFor();
  return page;
}

async function choose(page: Page, box: string, words: string): Promise<void> {
  await page.getByRole('combobox', { name: box }).fill(words);
  await page.locator('.suggestions:not([hidden]) [role="option"]').first().waitFor();
  await page.getByRole('combobox', { name: box }).press('Enter');
}

/** Fills in a case that can be sent. */
async function fill(page: Page, narrative: string): Promise<void> {
  await page.getByLabel('Device and board').selectOption('quellbrook-8');
  await choose(page, 'Add a symptom from the list', 'grey screen');
  await choose(page, 'Add a check or a fix', 'clock at the proc');
  await page.getByLabel('It showed').selectOption({ index: 2 });
  await page.getByLabel('Outcome', { exact: true }).selectOption('unresolved');
  await page.getByLabel('What the next person should know').fill(narrative);
}

const saved = (page: Page) => page.locator('.post-save[data-state="saved"]').waitFor();
const narrativeIn = (page: Page) => page.getByLabel('What the next person should know').inputValue();
const keptHere = (page: Page) => page.evaluate(() => window.localStorage.getItem('post-draft'));

describe('posting from a look-up', () => {
  it('begins with what was asked: the device, the symptom, the check with its outcome', async () => {
    const page = await askPage(`${STANDING_EXAMPLE}, zzyzx`, {}, [['on', 'quellbrook-8']]);
    await page.getByRole('link', { name: 'I fixed it: post this' }).click();
    await page.waitForURL(/\/post\?/);
    await formOf(page).waitFor();
    expect(await page.getByLabel('Device and board').inputValue()).toBe('quellbrook-8');
    expect(await textOf(page.getByRole('list', { name: 'Symptoms' }))).toMatch(/grey screen\s*present/i);
    expect(await textOf(page.locator('.post-steps'))).toMatch(/clock at the processor/i);
    expect(await page.getByLabel('It showed').inputValue()).toBe('pulsing');
    expect(await page.getByLabel('In your own words').inputValue()).toBe('zzyzx');
  });
});

describe('a draft', () => {
  it('survives a reload, then signing in, and is then with the account alone', async () => {
    const page = await postPage();
    const words = unique();
    await page.getByLabel('What the next person should know').fill(words);
    await page.reload();
    await formOf(page).waitFor();
    expect(await narrativeIn(page)).toBe(words);
    await page.getByRole('link', { name: 'Sign in to send it' }).click();
    await enter(page);
    await formOf(page).waitFor();
    expect(await narrativeIn(page)).toBe(words);
    await saved(page);
    expect(page.url()).toMatch(/\/post\?draft=[a-z2-7]{16}$/);
    expect(await keptHere(page)).toBeNull();
    await page.reload();
    await formOf(page).waitFor();
    expect(await narrativeIn(page)).toBe(words);
  });

  it('survives a lost connection', async () => {
    const page = await postPage({ expected: /ERR_INTERNET_DISCONNECTED|Failed to load resource/ }, true);
    const words = unique();
    await page.context().setOffline(true);
    await page.getByLabel('What the next person should know').fill(words);
    await page.locator('.post-save[data-state="offline"]').waitFor();
    expect(await keptHere(page)).toContain(words);
    await page.context().setOffline(false);
    await saved(page);
    expect(await keptHere(page)).toBeNull();
  });

  it('leaves nothing behind when it is discarded', async () => {
    const page = await postPage({}, true);
    const words = unique();
    await page.getByLabel('What the next person should know').fill(words);
    await saved(page);
    const address = page.url();
    await page.getByRole('button', { name: 'Discard the draft' }).click();
    await page.getByRole('button', { name: 'Discard for good' }).click();
    await page.waitForURL(/\/post$/);
    expect(await narrativeIn(page)).toBe('');
    expect(await keptHere(page)).toBeNull();
    await page.goto(address);
    await page.getByText('was discarded or sent').waitFor();
    expect(await page.content()).not.toContain(words);
  });
});

describe('sending', () => {
  it('is one submission when it is pressed twice; it can be withdrawn, and its link cut', async () => {
    const page = await postPage({ screen: 'phone' }, true);
    await fill(page, unique());
    await page.getByRole('button', { name: 'Send to review' }).dblclick();
    await page.getByRole('heading', { name: 'Sent to review' }).waitFor();
    const id = await textOf(page.locator('.section .figure'));
    // Pressed at once, the link would be taken for the second half of a double press.
    await page.waitForTimeout(800);
    await page.locator('.onward').getByRole('link', { name: 'Your submissions' }).click();
    const line = page.locator('.submission', { has: page.getByText(id) });
    await line.waitFor({ state: 'attached' });
    expect(await line.count()).toBe(1);
    expect(await textOf(line)).toContain('Waits for review');
    const withdraw = line.getByRole('button', { name: /^Withdraw(?! it)/ });
    const sure = line.getByRole('button', { name: 'Withdraw it' });
    // A press that comes before the scripts of the row does nothing.
    await expect
      .poll(
        async () =>
          withdraw.click({ timeout: 1_000 }).then(
            () => sure.count(),
            () => sure.count(),
          ),
        { timeout: 20_000 },
      )
      .toBe(1);
    await sure.click();
    await line.getByText('Withdrawn.').waitFor();
    await line.getByRole('button', { name: 'Cut my link' }).click();
    await line.getByRole('button', { name: 'Cut the link for good' }).click();
    expect(await textOf(line.locator('.once-shown'))).toMatch(/^([a-z2-7]{4}-){4}[a-z2-7]{4}$/);
    await line.getByRole('button', { name: 'I have kept the key' }).click();
    await line.waitFor({ state: 'detached' });
  });

  it('shows what is wrong at its field and in a summary that leads there, and keeps what was typed', async () => {
    const page = await postPage({}, true);
    const words = unique();
    await page.getByLabel('What the next person should know').fill(words);
    await page.getByLabel('Soak time afterwards').fill('an hour');
    await page.getByRole('button', { name: 'Send to review' }).click();
    const summary = page.locator('.fault-summary');
    await summary.waitFor();
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('fault-summary');
    for (const place of ['Device:', 'Symptoms:', 'Outcome:', 'Soak time:']) expect(await textOf(summary)).toContain(place);
    await summary.getByRole('link', { name: /^Soak time/ }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('post-soakMinutes');
    expect(await page.locator('#post-soakMinutes-fault').count()).toBe(1);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('60');
    await page.locator('#post-soakMinutes-fault').waitFor({ state: 'detached' });
    expect(await narrativeIn(page)).toBe(words);
  });

  it('stops at personal details until each is settled', async () => {
    const page = await postPage({}, true);
    const words = unique();
    await fill(page, `${words} Write to zork@bench.example about it.`);
    await page.getByRole('button', { name: 'Send to review' }).click();
    const details = page.locator('.post-details');
    await details.getByText('zork@bench.example').first().waitFor();
    await details
      .getByRole('button', { name: /^Replace by/ })
      .first()
      .click();
    await details.waitFor({ state: 'detached' });
    expect(await narrativeIn(page)).toBe(`${words} Write to [mail address] about it.`);
    await page.getByRole('button', { name: 'Send to review' }).click();
    await page.getByRole('heading', { name: 'Sent to review' }).waitFor();
  });

  it('takes own words into the lists, and a word that is missing as a proposal', async () => {
    const page = await postPage();
    await page.getByLabel('In your own words').fill('grey screen, clock present, zzyzx');
    await page.getByRole('button', { name: 'Read these words' }).click();
    await page.locator('.tag', { hasText: /grey screen/i }).waitFor();
    expect(await page.getByLabel('In your own words').inputValue()).toBe('zzyzx');
    await page.getByRole('combobox', { name: 'Add a symptom from the list' }).fill('zzyzx');
    await page.getByRole('option', { name: /as a new symptom/ }).click();
    await page.getByLabel('What it means, in a sentence').fill('A sound like paper being torn.');
    expect(await page.getByLabel('Word', { exact: true }).inputValue()).toBe('zzyzx');
  });

  it('works by keys alone', async () => {
    const page = await postPage({}, true);
    const tabTo = async (label: RegExp) => {
      for (let press = 0; press < 120; press++) {
        await page.keyboard.press('Tab');
        const name = await page.evaluate(() => {
          const node = document.activeElement as HTMLInputElement | null;
          return node?.labels?.[0]?.textContent ?? node?.textContent ?? '';
        });
        if (label.test(name)) return;
      }
      throw new Error(`Tab does not reach ${label}.`);
    };
    // A list takes what is typed as one word only while the keys follow one another within a second.
    const choose = (words: string) =>
      expect
        .poll(
          async () => {
            await page.keyboard.type(words);
            return page.evaluate(() => (document.activeElement as HTMLSelectElement).selectedOptions[0]?.textContent?.trim());
          },
          { interval: 1_200, timeout: 20_000 },
        )
        .toMatch(new RegExp(`^${words}`));
    await tabTo(/^Device and board/);
    await choose('Quellbrook 8');
    await tabTo(/^Add a symptom/);
    await page.keyboard.type('grey screen');
    await page.keyboard.press('Enter');
    await tabTo(/^Add a check or a fix/);
    await page.keyboard.type('clock at the proc');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.locator('.post-steps .post-row').waitFor();
    await page.keyboard.press('Shift+Tab');
    await page.getByLabel('It showed').focus();
    await page.keyboard.press('ArrowDown');
    await tabTo(/^Outcome/);
    await choose('Unresolved');
    await tabTo(/^What the next person/);
    await page.keyboard.type(unique());
    await tabTo(/^Send to review/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Sent to review' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('post-sent-head');
  });
});

describe('the pages for posting', () => {
  it.each(['desktop', 'phone'] as const)('have nothing for axe to find, light or dark, on a %s', async (screen) => {
    const page = await postPage({ screen }, true);
    await fill(page, `${unique()} Write to zork@bench.example.`);
    await page.getByLabel('Soak time afterwards').fill('an hour');
    await page.getByRole('button', { name: 'Send to review' }).click();
    await page.locator('.fault-summary').waitFor();
    await page.locator('.post-details').waitFor();
    const found = async () =>
      (await new AxeBuilder({ page }).withTags(RULES).analyze()).violations.map(
        (v) => `${v.id} ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`,
      );
    expect(await found()).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await found()).toEqual([]);
    await page.goto(addressOf('/submissions'));
    expect(await found()).toEqual([]);
  });

  it('fit a screen of 360 pixels, with targets of 44', async () => {
    const page = await postPage({ context: { viewport: { width: 360, height: 780 } } }, true);
    await fill(page, unique());
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    const low = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          '.post-form :is(.press, .tag-press, input:not([type="checkbox"]), select, textarea, summary, .tick)',
        ),
      ]
        .filter((node) => !node.closest('.post-trap'))
        .map((node) => ({ name: `${node.tagName} ${node.className} ${node.id}`, height: node.getBoundingClientRect().height }))
        .filter(({ height }) => height > 0 && height < 44)
        .map(({ name, height }) => `${name} ${height}`),
    );
    expect(low).toEqual([]);
  });
});
