import { randomBytes } from 'node:crypto';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, textOf } from './ask-page';
import { openPage } from './harness/open-page';

const PASSWORD = 'solder and rosin at dusk';
/** Each test signs up somebody of its own. */
const newName = () => `bench-${randomBytes(4).toString('hex')}`;
/** The part of the header that leads to the account. */
const corner = (page: Page) => page.locator('.site-account a');

/** Fills the form by keys alone, from wherever the focus is: each field is reached by Tab. */
async function typeInto(page: Page, label: string, text: string): Promise<void> {
  for (let i = 0; i < 40; i += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => document.activeElement?.closest('.account-field')?.querySelector('label')?.textContent);
    if (at === label) {
      await page.keyboard.type(text);
      return;
    }
  }
  throw new Error(`Tab does not reach ${label}.`);
}

async function press(page: Page, name: string): Promise<void> {
  for (let i = 0; i < 60; i += 1) {
    await page.keyboard.press('Tab');
    if ((await page.evaluate(() => document.activeElement?.textContent)) === name) {
      await page.keyboard.press('Enter');
      return;
    }
  }
  throw new Error(`Tab does not reach ${name}.`);
}

async function signUp(page: Page, name: string): Promise<void> {
  await page.goto(addressOf('/sign-up'));
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign up' }).click();
  await page.waitForURL(/\/account$/);
}

describe('an account', () => {
  it('is made, left and entered again by keys alone', async () => {
    const page = await openPage();
    const name = newName();
    await page.goto(addressOf('/sign-up'));
    await typeInto(page, 'Name', name);
    await typeInto(page, 'Password', PASSWORD);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/account$/);
    await page.locator('.site-account a', { hasText: name }).waitFor();
    await press(page, 'Sign out');
    await page.waitForURL(/\/sign-in\?out=1/);
    await page.locator('.site-account a', { hasText: 'Sign in' }).waitFor();
    await typeInto(page, 'Name', name);
    await typeInto(page, 'Password', PASSWORD);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/account$/);
    expect(await textOf(page.locator('.lead'))).toContain(`${name}: contributor`);
    expect((await page.context().cookies()).map(({ httpOnly, sameSite }) => ({ httpOnly, sameSite }))).toEqual([
      { httpOnly: true, sameSite: 'Lax' },
    ]);
  });

  it('is made, left and entered again without scripts', async () => {
    const page = await openPage({ scripts: false });
    const name = newName();
    await signUp(page, name);
    expect(await textOf(corner(page))).toBe(name);
    await page.getByRole('button', { name: 'Sign out', exact: true }).click();
    await page.waitForURL(/\/sign-in\?out=1/);
    expect(await textOf(corner(page))).toBe('Sign in');
    await page.getByLabel('Name', { exact: true }).fill(name);
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL(/\/account$/);
    expect(await textOf(corner(page))).toBe(name);
  });

  it('leads back to the page that asked for it, and to no other site', async () => {
    const page = await openPage();
    await page.goto(addressOf('/sign-up', [['next', '/cases']]));
    await page.getByLabel('Name', { exact: true }).fill(newName());
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign up' }).click();
    await page.waitForURL(/\/cases$/);
    await page.goto(addressOf('/sign-in', [['next', '//elsewhere.example/']]));
    expect(await page.locator('input[name="next"]').inputValue()).toBe('/account');
  });

  it('is asked for by its own page', async () => {
    const page = await openPage();
    await page.goto(addressOf('/account'));
    await page.waitForURL(/\/sign-in\?next=/);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Sign in');
  });

  it('can be downloaded, and deleted with its password alone', async () => {
    const page = await openPage();
    const name = newName();
    await signUp(page, name);
    const download = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Download it' }).click();
    expect((await download).suggestedFilename()).toBe('second-bench-account.json');
    const held = await page.evaluate(async () => (await fetch('/api/account/download')).text());
    expect(JSON.parse(held).account.name).toBe(name);
    const form = page.locator('form', { has: page.getByRole('button', { name: 'Delete the account' }) });
    await form.getByLabel('Password').fill('wrong password');
    await form.getByRole('button').click();
    await form.getByRole('alert').waitFor();
    await form.getByLabel('Password').fill(PASSWORD);
    await form.getByRole('button').click();
    await page.waitForURL(/deleted=1/);
    expect(await textOf(corner(page))).toBe('Sign in');
  });
});

describe('a form that is refused', () => {
  for (const scripts of [true, false]) {
    it(`says so at the field and in a summary, and keeps what was typed but for the password, ${scripts ? 'with' : 'without'} scripts`, async () => {
      const page = await openPage({ scripts });
      await page.goto(addressOf('/sign-up'));
      await page.getByLabel('Name', { exact: true }).fill('no good name');
      await page.getByLabel('Password', { exact: true }).fill('short');
      await page.getByRole('button', { name: 'Sign up' }).click();
      const summary = page.locator('.fault-summary');
      await summary.waitFor();
      expect(await summary.getByRole('link').count()).toBe(2);
      expect(await textOf(page.locator('.field-fault').first())).toContain('letters a to z');
      expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('no good name');
      expect(await page.getByLabel('Name', { exact: true }).getAttribute('aria-invalid')).toBe('true');
      expect(await page.getByLabel('Password', { exact: true }).inputValue()).toBe('');
      await summary.getByRole('link').first().click();
      expect(await page.evaluate(() => document.activeElement?.getAttribute('name') ?? location.hash)).toMatch(/^name$|^#/);
    });
  }

  it('of a wrong password takes the focus to the summary', async () => {
    const page = await openPage();
    await page.goto(addressOf('/sign-in'));
    await page.getByLabel('Name', { exact: true }).fill('demo-keeper');
    await page.getByLabel('Password', { exact: true }).fill('not the password');
    await page.keyboard.press('Enter');
    await page.locator('.fault-summary:focus').waitFor();
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('demo-keeper');
  });
});

describe('the demo', () => {
  it('names an account for each role on the sign-in page, and they work', async () => {
    const page = await openPage();
    await page.goto(addressOf('/sign-in'));
    const accounts = page.locator('.demo-accounts li');
    expect(await accounts.locator('strong').allTextContents()).toEqual(['reader', 'contributor', 'moderator', 'keeper']);
    const [name = '', password = ''] = await accounts.last().locator('.figure').allTextContents();
    await page.getByLabel('Name', { exact: true }).fill(name);
    await page.getByLabel('Password', { exact: true }).fill(password);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/account$/);
    expect(await textOf(page.locator('.lead'))).toContain('demo-keeper: keeper');
  });
});

describe('axe', () => {
  const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  it('finds nothing on the account pages, faults shown, light or dark', async () => {
    const page = await openPage({ screen: 'phone' });
    const look = async () => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
        expect(
          violations.map((v) => `${v.id} ${v.nodes[0]?.target.join(' ')}`),
          page.url(),
        ).toEqual([]);
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth), page.url()).toBeLessThanOrEqual(390);
    };
    await page.goto(addressOf('/reset/no-such-link'));
    await look();
    await page.goto(addressOf('/sign-in'));
    await look();
    await page.goto(addressOf('/sign-up'));
    await page.getByRole('button', { name: 'Sign up' }).click();
    await page.locator('.fault-summary').waitFor();
    await look();
    await signUp(page, newName());
    await look();
  });
});
