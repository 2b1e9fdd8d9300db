import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, askPage, paramsOf, STANDING_EXAMPLE } from './ask-page';
import { openPage } from './harness/open-page';

/** Presses Tab until what has the focus passes; fails after as many presses as a page can have stops. */
async function tabTo(page: Page, passes: (text: string) => boolean): Promise<void> {
  for (let press = 0; press < 200; press++) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => {
      const node = document.activeElement;
      return node === null ? '' : `${node.getAttribute('aria-label') ?? ''} ${node.textContent ?? ''}`;
    });
    if (passes(text)) return;
  }
  throw new Error('Tab never came there.');
}

describe('the main path by keyboard alone', () => {
  it('goes from the key "/" over the question and an outcome to the plan', async () => {
    const page = await openPage();
    await page.goto(addressOf('/'));
    await page.locator('.slash-key').waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type(STANDING_EXAMPLE);
    await page.keyboard.press('Enter');
    await page.locator('.verdict').waitFor();
    await tabTo(page, (text) => text.includes('I found: '));
    await page.keyboard.press('Enter');
    await page.waitForURL(/f=check\./);
    expect(paramsOf(page, 'f')).toHaveLength(1);
    // The pressed link is gone; the focus is at the answer and not lost.
    await page.waitForFunction(() => document.activeElement?.id === 'answer');
    await tabTo(page, (text) => text.includes('Make a repair plan'));
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/plan/);
  });

  it('skips to the page first of all', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Skip');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
  });

  it('shows where the focus is', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await tabTo(page, (text) => /make it absent/i.test(text));
    const outline = await page.evaluate(() =>
      document.activeElement ? getComputedStyle(document.activeElement).outlineWidth : '0px',
    );
    expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
  });
});

describe('the key "/"', () => {
  it('types itself inside a box, and can be turned off for good', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await page.locator('#words').press('End');
    await page.keyboard.type('/');
    expect(await page.locator('#words').inputValue()).toBe(`${STANDING_EXAMPLE}/`);
    await page.getByLabel(/goes to the look-up box/i).uncheck();
    await page.reload();
    await page.locator('.slash-key').waitFor();
    await page.keyboard.press('/');
    expect(await page.evaluate(() => document.activeElement?.id)).not.toBe('words');
  });
});
