import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, textOf } from './ask-page';
import { openPage } from './harness/open-page';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const PASSWORDS = { 'demo-contributor': 'marrow-lane-posting', 'demo-moderator': 'marrow-lane-reviewing', 'demo-keeper': 'marrow-lane-keeping' };

async function signIn(page: Page, name: keyof typeof PASSWORDS, next: string): Promise<void> {
  await page.context().clearCookies();
  await page.goto(addressOf('/sign-in', [['next', next]]));
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORDS[name]);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.locator('.site-account', { hasText: name }).waitFor();
}

async function axe(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
    found.push(...violations.map((v) => `${page.url()} ${v.id} ${v.nodes[0]?.target.join(' ')}`));
  }
  if ((await page.evaluate(() => document.documentElement.scrollWidth)) > 390) found.push(`${page.url()} is too wide`);
  return found;
}

/** A published case that ended resolved, in an earlier year: the list begins with the latest months. */
async function resolvedCase(page: Page): Promise<string> {
  await page.goto(addressOf('/cases'));
  for (let turned = 0; turned < 60; turned++) {
    for (const line of await page.locator('.case-line').all()) {
      const text = await textOf(line);
      if (/\bresolved\./i.test(text) && !/partly|unresolved/i.test(text) && !text.includes('2026')) {
        return (await line.locator('a').first().getAttribute('href')) ?? '';
      }
    }
    const earlier = await page.getByRole('link', { name: 'Earlier cases' }).getAttribute('href');
    await page.goto(addressOf(earlier ?? '/cases'));
  }
  throw new Error('No case of an earlier year ended resolved.');
}

describe('a report on how a repair held', () => {
  it('is sent without scripts, decided by a moderator, and stands on the page of the case', async () => {
    const page = await openPage({ scripts: false });
    await signIn(page, 'demo-contributor', '/cases');
    const path = await resolvedCase(page);
    await page.goto(addressOf(path));
    await page.getByRole('link', { name: 'Say whether it held' }).click();
    await page.waitForURL(/\/afterwards$/);
    await page.getByLabel('Months from the repair').fill('2000');
    await page.getByLabel('It held').check();
    await page.getByRole('button', { name: 'Send the report' }).click();
    await page.getByText('Write at most 600 months.').first().waitFor();
    await page.getByLabel('Months from the repair').fill('1');
    await page.getByRole('button', { name: 'Send the report' }).click();
    await page.getByText('Thank you. A moderator looks at it').waitFor();
    await signIn(page, 'demo-moderator', '/afterwards');
    const row = page.locator('.account-rows li', { has: page.getByText(path.split('/').at(-1) ?? '') });
    expect(await textOf(row)).toMatch(/Held for 1\smonth, says a reader/);
    await row.getByRole('button', { name: 'Accept' }).click();
    await row.waitFor({ state: 'detached' });
    await page.goto(addressOf(path));
    expect(await textOf(page.locator('.case-afterwards'))).toMatch(/held for 1\smonth, says another reader/);
    expect(await page.content()).not.toContain('demo-contributor');
  });
});

describe('the keeper’s page', () => {
  it('lists accounts, makes a link that is shown once, and is not there for others', async () => {
    const page = await openPage({ expected: /404/ });
    await signIn(page, 'demo-keeper', '/keeper');
    await page.goto(addressOf('/keeper', [['name', 'demo-reader']]));
    const row = page.locator('.account-rows li', { hasText: 'demo-reader' });
    expect(await page.locator('.account-rows li').count()).toBe(1);
    await row.getByRole('button', { name: /^Make a link/ }).click();
    expect(await textOf(row.locator('.once-shown'))).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/reset\/[\w-]{43}$/);
    await row.getByRole('button', { name: /^End its sessions/ }).click();
    await row.getByText('signed out everywhere').waitFor();
    await signIn(page, 'demo-moderator', '/cases');
    expect((await page.goto(addressOf('/keeper')))?.status()).toBe(404);
  });
});

describe('axe', () => {
  it('finds nothing on these pages on a phone, light or dark', async () => {
    const page = await openPage({ screen: 'phone' });
    const path = await resolvedCase(page);
    await page.goto(addressOf(`${path}/afterwards`));
    await page.getByRole('button', { name: 'Send the report' }).click();
    await page.locator('.fault-summary').waitFor();
    expect(await axe(page)).toEqual([]);
    await signIn(page, 'demo-keeper', '/keeper');
    await page.locator('.account-rows').waitFor();
    expect(await axe(page)).toEqual([]);
    await page.goto(addressOf('/afterwards'));
    expect(await axe(page)).toEqual([]);
  });
});
