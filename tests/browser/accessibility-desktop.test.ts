import { describe, expect, it } from 'vitest';
import { addressOf } from './ask-page';
import { lookOver, pages } from './harness/look-over';
import { openPage } from './harness/open-page';

describe('axe on a desktop', () => {
  it.each(pages)('finds nothing on %s, light or dark, everything unfolded', async (_, path) => {
    const page = await openPage();
    await page.goto(addressOf(path));
    expect(await lookOver(page)).toEqual([]);
  });
});
