import type { Page } from 'playwright-core';
import AxeBuilder from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { addressOf, askPage } from './ask-page';
import { openPage } from './harness/open-page';

/** What the look-up reads these words as. */
async function readAs(words: string): Promise<string> {
  const page = await askPage(words);
  return page.locator('main').innerText();
}

async function signIn(page: Page, name: string, password: string): Promise<void> {
  await page.goto(addressOf('/sign-in'));
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.locator('main form button[type=submit]').last().click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
}

const faults = async (page: Page) => (await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id);

describe('a merge of two symptoms', () => {
  it('shows in the look-up, and so does its undo', async () => {
    const page = await openPage();
    await signIn(page, 'demo-moderator', 'marrow-lane-reviewing');
    expect(await readAs('boots to grey')).toContain('Grey screen');
    await page.goto(addressOf('/review/words?kind=symptom&entry=grey-screen'));
    expect(await faults(page)).toEqual([]);
    await page.getByLabel('Merge it into').selectOption('white-screen');
    await page.getByRole('button', { name: 'Merge', exact: true }).click();
    const newest = page.locator('.word-changes li').first();
    await newest
      .getByText(/was merged into/)
      .first()
      .waitFor();
    try {
      expect(await readAs('boots to grey')).toContain('White screen');
    } finally {
      await newest.getByRole('button').click();
      await newest.getByText('Undone.').waitFor();
    }
    expect(await readAs('boots to grey')).toContain('Grey screen');
  });
});

describe('axe', () => {
  it('finds nothing on the log, in either part, and on the health page', async () => {
    const page = await openPage();
    await page.goto(addressOf('/log'));
    expect(await faults(page)).toEqual([]);
    await signIn(page, 'demo-keeper', 'marrow-lane-keeping');
    for (const path of ['/log', '/review/health']) {
      await page.goto(addressOf(path));
      await page.locator('main h1').waitFor();
      expect(await faults(page), path).toEqual([]);
    }
  });
});
