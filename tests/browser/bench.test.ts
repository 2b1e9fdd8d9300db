import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { beforeAll, afterAll, describe, expect, it } from 'vitest';
import { demoDatabase } from './harness/demo-database';
import { openPage } from './harness/open-page';
import { type RunningServer, startServer } from './harness/start-server';

// Logs, accounts and a case are written here: this file has a server of its own.
let server: RunningServer;
let database: Awaited<ReturnType<typeof demoDatabase>>;
beforeAll(async () => {
  database = await demoDatabase();
  server = await startServer(database.file);
});
afterAll(async () => {
  await server.stop();
  database.remove();
});

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const PHONE = { screen: 'phone', context: { hasTouch: true, isMobile: true, timezoneId: 'Pacific/Auckland' } } as const;
/** What the browser logs of itself when the network is cut. */
const CUT = /ERR_INTERNET_DISCONNECTED|ERR_FAILED|Failed to load resource/;

/** The demo's own contributor; its password stands on the sign-in page. */
async function signIn(page: Page): Promise<void> {
  await page.goto(`${server.url}/sign-in?next=/bench`);
  await page.getByLabel('Name', { exact: true }).fill('demo-contributor');
  await page.getByLabel('Password', { exact: true }).fill('marrow-lane-posting');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(/\/bench/);
}

const ready = (page: Page) => page.locator('.bench[data-ready="true"]').waitFor();
const sync = (page: Page, state: string) => page.locator(`[data-sync="${state}"]`).waitFor();

async function putOnBench(page: Page, device: string, label: string): Promise<void> {
  await page.getByLabel('Device and board').selectOption(device);
  await page.getByLabel('A name to tell it by, for you alone').fill(label);
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('heading', { name: 'Likely causes' }).waitFor();
}

/** Types into the one box of the log; Enter takes the first of the list, or reads a sentence. */
async function enter(page: Page, words: string, shows: RegExp): Promise<void> {
  const box = page.getByRole('combobox', { name: 'What you see, checked or did' });
  await box.fill(words);
  await page.locator('#log-box-list:not([hidden]) [role="option"]').first().waitFor();
  await box.press('Enter');
  await page.getByRole('list', { name: 'The log' }).getByText(shows).first().waitFor();
}

const logText = async (page: Page) => (await page.getByRole('list', { name: 'The log' }).innerText()).replaceAll(/\s+/g, ' ');
/** The service worker holds the page and its files. */
const offlineReady = (page: Page) =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    for (let i = 0; i < 200 && navigator.serviceWorker.controller === null; i += 1) await new Promise((r) => setTimeout(r, 50));
    return navigator.serviceWorker.controller !== null;
  });

describe('a whole repair on a phone', () => {
  it('goes from the symptom to a posted case, half of it without a network', async () => {
    const page = await openPage({ ...PHONE, expected: CUT });
    await signIn(page);
    await ready(page);
    await putOnBench(page, 'quellbrook-8-rev-a', 'blue one');
    await enter(page, 'grey screen, clock present', /Grey screen/);
    await page.getByRole('list', { name: 'The log' }).getByText('Clock at the processor').first().waitFor();
    const before = await page.locator('.cause-head').first().innerText();
    expect(await offlineReady(page)).toBe(true);
    await sync(page, 'synced');

    await page.context().setOffline(true);
    await page.reload();
    await ready(page);
    expect(await logText(page)).toMatch(/Grey screen: present.*Clock at the processor/);
    // The next check by one press; causes and checks move with it.
    const check = page.locator('[aria-labelledby="bench-checks-head"] details').first();
    const name = await check.locator('.check-name').innerText();
    await check.locator('.bench-choices .press').first().tap();
    await page.getByRole('list', { name: 'The log' }).getByText(name).first().waitFor();
    await expect.poll(() => page.locator('.cause-head').first().innerText()).not.toBe(before);

    // Forty pins by thumb, one press each; a number on the way.
    await page.getByLabel('Part on the board').selectOption('U1');
    for (let pin = 1; pin <= 40; pin += 1) {
      if (pin === 11) {
        await page.getByLabel('Number', { exact: true }).fill('4.61V');
        await page.getByRole('button', { name: 'Enter', exact: true }).tap();
      } else await page.getByRole('button', { name: pin % 7 === 0 ? /^Low/ : /^Pulsing/ }).tap();
    }
    await expect.poll(() => page.locator('.pin-mark').count()).toBeGreaterThan(40);
    expect(await page.getByRole('button', { name: /^Pin 11 / }).getAttribute('aria-label')).toContain('4.61 V');
    expect(await page.locator('.part-score').innerText()).toMatch(/Evidence that the fault is at this part: [+−]?\d+\.\d.dB/);

    await enter(page, 'replace video ram', /./);
    await page.getByRole('button', { name: /: cured$/ }).first().tap();
    await page.getByRole('list', { name: 'The log' }).getByText('cured', { exact: true }).first().waitFor();
    await page.getByRole('button', { name: /Rails to ground resistance: passed/ }).tap();
    await page.getByRole('button', { name: 'It ran that long' }).tap();
    await enter(page, 'note: socket was green with verdigris', /verdigris/);
    await sync(page, 'offline');

    await page.context().setOffline(false);
    await sync(page, 'synced');
    await page.getByRole('button', { name: 'Post this case' }).tap();
    await page.locator('.post-form[data-ready="true"]').waitFor();
    expect(await page.getByLabel('Device and board').inputValue()).toBe('quellbrook-8-rev-a');
    expect(await page.getByLabel('Outcome', { exact: true }).inputValue()).toBe('resolved');
    expect(await page.getByLabel(/Soak time/).inputValue()).toBe('60');
    expect(await page.locator('.post-form').innerText()).toMatch(/Readings pin by pin: 40/);
    await page.getByRole('button', { name: /Send/ }).tap();
    await page.getByText(/waits for review|Sent to review|is sent/i).first().waitFor();
  }, 180_000);
});

describe('two browsers of one account', () => {
  it('both keep what either wrote while one had no network, and an edit and an undo reach the other', async () => {
    const phone = await openPage({ ...PHONE, expected: CUT });
    await signIn(phone);
    await ready(phone);
    await putOnBench(phone, 'ormadic-duo-rev-1', 'club unit');
    await enter(phone, 'no sound', /No sound/i);
    await sync(phone, 'synced');
    const bench = await openPage({ expected: CUT });
    await signIn(bench);
    await ready(bench);
    await bench.getByRole('button', { name: /club unit/ }).click();
    await expect.poll(() => logText(bench)).toMatch(/no sound/i);

    await phone.context().setOffline(true);
    await enter(phone, 'garbled picture', /Garbage on the screen/);
    await enter(bench, 'note: bought at the club', /bought at the club/);
    await sync(bench, 'synced');
    await phone.context().setOffline(false);
    await expect.poll(() => logText(phone), { timeout: 30_000 }).toMatch(/bought at the club/);
    await bench.reload();
    await expect.poll(() => logText(bench), { timeout: 30_000 }).toMatch(/Garbage on the screen/);

    await bench.getByRole('button', { name: 'Undo' }).click();
    await sync(bench, 'synced');
    await expect.poll(() => bench.locator('.timeline > li').count()).toBe(2);
  }, 120_000);
});

describe('the bench', () => {
  it('begins from a look-up, and holds nothing against axe, light or dark', async () => {
    const page = await openPage({ screen: 'phone' });
    await page.goto(`${server.url}/?q=grey+screen%2C+clock+present%2C+zzyzx&on=quellbrook-8-rev-a`);
    await page.getByRole('link', { name: 'Start a bench log with this' }).click();
    await page.waitForURL(/\/bench\?/);
    await ready(page);
    await page.getByRole('button', { name: 'Put it on the bench' }).click();
    await expect.poll(() => logText(page)).toMatch(/Grey screen.*Clock at the processor.*zzyzx/);
    await page.getByLabel('Part on the board').selectOption('U1');
    await page.locator('[aria-labelledby="bench-plan-head"][aria-busy="false"]').waitFor();
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    expect((await new AxeBuilder({ page }).withTags(RULES).analyze()).violations.map((v) => `${v.id} ${v.nodes[0]?.target}`)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect((await new AxeBuilder({ page }).withRules(['color-contrast']).analyze()).violations.map((v) => v.nodes[0]?.target)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  });

  it('reads a 40-pin part by keys alone: one key for each pin, and four more for a number', async () => {
    const page = await openPage();
    await page.goto(`${server.url}/bench`);
    await ready(page);
    await putOnBench(page, 'quellbrook-8-rev-a', '');
    await page.getByLabel('Part on the board').selectOption('U1');
    await page.getByRole('button', { name: /^Pin 1 / }).focus();
    let keys = 0;
    for (let pin = 1; pin <= 40; pin += 1) {
      const typed = pin === 11 ? [...'4.61', 'Enter'] : ['hlpf'.charAt(pin % 4)];
      for (const key of typed) {
        await page.keyboard.press(key);
        keys += 1;
      }
    }
    expect(keys).toBe(44);
    await expect.poll(() => page.locator('button[aria-label$="not read"]').count()).toBe(0);
    // Arrows go by the place in the package: across from pin 1 is pin 40.
    await page.getByRole('button', { name: /^Pin 1 / }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Pin 40 /);
  });

  it('prints the sheet and the report on A4 and on Letter, cautions and pins included', async () => {
    const page = await openPage();
    await page.goto(`${server.url}/bench`);
    await ready(page);
    await putOnBench(page, 'quellbrook-8-rev-a', 'paper');
    await enter(page, 'grey screen', /Grey screen/);
    const href = await page.getByRole('link', { name: 'Bench sheet to print' }).getAttribute('href');
    await page.goto(`${server.url}${href}`);
    await page.getByRole('heading', { name: 'Next checks' }).waitFor();
    await page.getByLabel(/^U1 /).check();
    expect(await page.locator('.sheet-pin').count()).toBe(40);
    expect(await page.locator('.sheet .caution').count()).toBeGreaterThan(2);
    for (const format of ['A4', 'Letter'] as const) expect((await page.pdf({ format })).length).toBeGreaterThan(20_000);
    await page.goto(`${server.url}${href}&of=report`);
    expect(await page.locator('.sheet-table').innerText()).toMatch(/Grey screen/);
  });
});
