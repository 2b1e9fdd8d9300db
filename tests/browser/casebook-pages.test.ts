import { describe, expect, it } from 'vitest';
import { addressOf, textOf } from './ask-page';
import { openPage } from './harness/open-page';

describe('the list of cases', () => {
  it('shows the latest months first and leads on to earlier ones', async () => {
    const page = await openPage();
    await page.goto(addressOf('/cases'));
    const monthsOn = async () => {
      const told = await page.locator('.case-line .case-told').allInnerTexts();
      return told.map((text) => Date.parse(`1 ${text.split(', ').pop()}`));
    };
    const first = await monthsOn();
    expect(first.length).toBeGreaterThan(5);
    expect(first).toEqual([...first].sort((a, b) => b - a));
    await page.getByRole('link', { name: 'Earlier cases' }).click();
    await page.waitForURL(/from=/);
    const earlier = await monthsOn();
    expect(Math.max(...earlier)).toBeLessThanOrEqual(Math.min(...first));
  });
});

describe('a case', () => {
  it('is told in the order it happened, with its cause and how it ended', async () => {
    const page = await openPage();
    await page.goto(addressOf('/cases'));
    await page.locator('.case-line a').first().click();
    await page.waitForURL(/\/cases\/[a-z2-7]{16}/);
    expect(await textOf(page.locator('.timeline li').first())).toContain('Seen at the start');
    const numbers = (await page.locator('.timeline .step-number').allTextContents()).map(Number);
    expect(numbers).toEqual(numbers.map((_, index) => index));
    const facts = await textOf(page.locator('.facts'));
    expect(facts).toContain('Cause');
    expect(facts).toContain('Outcome');
  });

  it.each(['/cases/aaaaaaaaaaaaaaaa', '/cases/Robert%27);--', '/devices/no-such-machine', '/nowhere'])(
    'that is not there (%s) is not found',
    async (path) => {
      const response = await fetch(addressOf(path));
      expect(response.status).toBe(404);
      expect(await response.text()).toContain('Nothing under this address');
    },
  );
});

describe('a device', () => {
  it('lists its boards with their parts, and leads to a look-up on the board', async () => {
    const page = await openPage();
    await page.goto(addressOf('/devices'));
    await page.getByRole('link', { name: 'Quellbrook 8' }).click();
    await page.waitForURL(/\/devices\//);
    expect(await page.locator('table').first().locator('tbody tr').count()).toBeGreaterThan(10);
    await page.getByRole('link', { name: 'Look up on this board' }).first().click();
    await page.waitForURL(/\?on=/);
    expect(await page.locator('#device').inputValue()).toMatch(/^quellbrook-8/);
  });
});

describe('every page', () => {
  it.each(['/', '/cases', '/devices', '/method', '/safety', '/words', '/plan?q=grey+screen'])(
    '(%s) says that the demo is invented, and how to stay safe',
    async (path) => {
      const page = await openPage({ scripts: false });
      await page.goto(addressOf(path));
      expect(await textOf(page.locator('header'))).toContain('invented');
      expect(await textOf(page.locator('footer'))).toContain('qualified people');
      expect(await page.title()).toContain('Second Bench');
    },
  );
});
