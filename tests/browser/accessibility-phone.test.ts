import AxeBuilder from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { addressOf } from './ask-page';
import { lookOver, pages, RULES } from './harness/look-over';
import { openPage, screens } from './harness/open-page';

describe('a phone', () => {
  it.each(pages)(
    'shows %s with nothing for axe to find, light or dark, and at 360 pixels without sideways scrolling',
    async (_, path) => {
      const page = await openPage({ screen: 'phone' });
      await page.goto(addressOf(path));
      expect(await lookOver(page)).toEqual([]);
      await page.setViewportSize({ width: 360, height: screens.phone.height });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    },
  );

  it('has nothing for axe to find on a case', async () => {
    const page = await openPage({ screen: 'phone' });
    await page.goto(addressOf('/cases'));
    await page.locator('.case-line a').first().click();
    await page.waitForURL(/\/cases\/[a-z2-7]{16}/);
    await page.locator('.timeline').waitFor();
    expect((await new AxeBuilder({ page }).withTags(RULES).analyze()).violations).toEqual([]);
  });
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
