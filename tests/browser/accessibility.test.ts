import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf } from './ask-page';
import { openPage, screens } from './harness/open-page';

/** WCAG 2.2, levels A and AA, and what axe calls best practice. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const pages: [string, string][] = [
  ['the first visit', '/'],
  ['an answer', '/?q=grey+screen%2C+clock+present%2C+zzyzx&on=quellbrook-8&not=symptom.no-sound&why=crystal-dead'],
  ['nothing read', '/?q=zzyzx'],
  ['no such device', '/?q=dead&on=no-such-device'],
  ['a plan', '/plan?q=grey+screen%2C+clock+present&on=quellbrook-8&over=150&strike=check.clock-at-processor'],
  ['the cases', '/cases'],
  ['the devices', '/devices'],
  ['a device', '/devices/quellbrook-8'],
  ['usual readings', '/devices/quellbrook-8-rev-a/readings'],
  ['the casebook', '/casebook'],
  ['the symptoms', '/symptoms'],
  ['a symptom', '/symptoms/grey-screen'],
  ['a symptom on a device', '/symptoms/grey-screen?on=quellbrook-8'],
  ['the parts', '/parts'],
  ['a part', '/parts/video-ram'],
  ['the fixes', '/fixes'],
  ['a fix', '/fixes/replace-video-ram'],
  ['cases narrowed', '/cases?symptom=grey-screen&part=video-ram'],
  ['open data', '/data'],
  ['the words', '/words?q=grey+screen&area=video'],
  ['the method', '/method'],
  ['a search', '/search?q=gray+scren&category=console'],
  ['a search that finds nothing', '/search?q=zorblefrotzmicronium'],
  ['all similar cases', '/search/similar?q=grey+screen%2C+clock+present&on=quellbrook-8'],
  ['safety', '/safety'],
  ['the empty bench', '/bench'],
];

/** Opens whatever is folded, so that it is looked at, too. */
async function unfold(page: Page): Promise<void> {
  await page.locator('.slash-key').waitFor();
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) {
      fold.removeAttribute('name');
      fold.open = true;
    }
  });
}

/** What axe finds: the rule, and where. The dark theme changes colours alone, so there it looks at these alone. */
async function findings(page: Page, theme: 'light' | 'dark'): Promise<string[]> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (theme === 'light' ? axe.withTags(RULES) : axe.withRules(['color-contrast'])).analyze();
  return violations.map(
    (v) =>
      `${theme}: ${v.id} at ${v.nodes
        .map((node) => node.target.join(' '))
        .slice(0, 4)
        .join(' | ')}`,
  );
}

describe('axe', () => {
  for (const [name, path] of pages) {
    it.each(['desktop', 'phone'] as const)(
      `finds nothing on ${name}, light or dark, everything unfolded, on a %s`,
      async (screen) => {
        const page = await openPage({ screen });
        await page.goto(addressOf(path));
        await unfold(page);
        const light = await findings(page, 'light');
        await page.emulateMedia({ colorScheme: 'dark' });
        expect([...light, ...(await findings(page, 'dark'))]).toEqual([]);
      },
    );
  }

  it('finds nothing on a case, nor on an address with nothing under it', async () => {
    const page = await openPage({ screen: 'phone' });
    await page.goto(addressOf('/cases'));
    await page.locator('.case-line a').first().click();
    await page.waitForURL(/\/cases\/[a-z2-7]{16}/);
    await page.locator('.timeline').waitFor();
    expect((await new AxeBuilder({ page }).withTags(RULES).analyze()).violations).toEqual([]);
  });
});

describe('a narrow screen', () => {
  for (const [name, path] of pages) {
    it(`of 360 pixels shows ${name} without sideways scrolling, everything unfolded`, async () => {
      const page = await openPage({ context: { viewport: { width: 360, height: screens.phone.height } } });
      await page.goto(addressOf(path));
      await unfold(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    });
  }
});

describe('targets', () => {
  it('that are pressed at the bench are at least 44 pixels high', async () => {
    const page = await openPage({ screen: 'phone' });
    await page.goto(addressOf('/', [['q', 'grey screen, clock present, zzyzx']]));
    const low = await page.evaluate(() => {
      const pressed = document.querySelectorAll(
        '.press, .tag a, .tag summary, .site-bar a, .check > summary, .cause-head, .ask input, .ask select',
      );
      return [...pressed]
        .map((node) => ({ node, box: (node.closest('label') ?? node).getBoundingClientRect() }))
        .filter(({ box }) => box.height > 0 && box.height < 44)
        .map(({ node, box }) => `${node.className || node.tagName} ${box.height}`);
    });
    expect(low).toEqual([]);
  });

  it('come first in the order of work on a phone: the next check stands above the causes', async () => {
    const page = await openPage({ screen: 'phone' });
    await page.goto(addressOf('/', [['q', 'grey screen, clock present']]));
    const top = async (selector: string) => (await page.locator(selector).boundingBox())?.y ?? Number.NaN;
    expect(await top('#next-head')).toBeLessThan(await top('#causes-head'));
  });
});
