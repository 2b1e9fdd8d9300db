import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../../server/start/project-folder.mjs';
import { addressOf, STANDING_EXAMPLE } from './ask-page';
import { type Look, openPage } from './harness/open-page';

const output = join(projectFolder, 'tests/output/shots');
const answer: [string, string][] = [
  ['q', STANDING_EXAMPLE],
  ['on', 'quellbrook-8'],
];

const shots: [string, string, Look][] = [
  ['look-up-light', addressOfLater('/', answer), {}],
  ['look-up-dark', addressOfLater('/', answer), { theme: 'dark' }],
  ['look-up-phone', addressOfLater('/', answer), { screen: 'phone' }],
  ['plan-light', addressOfLater('/plan', [...answer, ['over', '150']]), {}],
  ['plan-phone-dark', addressOfLater('/plan', [...answer, ['over', '150']]), { screen: 'phone', theme: 'dark' }],
];

/** A path with its parameters; the server's address is known only while the tests run. */
function addressOfLater(path: string, params: [string, string][]): string {
  return `${path}?${new URLSearchParams(params)}`;
}

describe('the pages, drawn for people to look at', () => {
  it.each(shots)('%s', async (name, path, look) => {
    mkdirSync(output, { recursive: true });
    const page = await openPage(look);
    await page.goto(addressOf(path));
    await page.locator('.slash-key').waitFor();
    const picture = await page.screenshot({ fullPage: true, path: join(output, `${name}.png`) });
    // A page that drew nothing comes to a few kilobytes.
    expect(picture.byteLength).toBeGreaterThan(20_000);
  });

  it('print a plan on paper, with a box to tick at every step and no controls', async () => {
    mkdirSync(output, { recursive: true });
    const page = await openPage();
    await page.goto(addressOf('/plan', [...answer, ['over', '150']]));
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.plan-done').first().isVisible()).toBe(true);
    expect(
      await page
        .getByRole('link', { name: /^strike: /i })
        .first()
        .isVisible(),
    ).toBe(false);
    const paper = await page.pdf({
      path: join(output, 'plan.pdf'),
      format: 'A4',
      margin: { top: '15mm', bottom: '15mm', left: '15mm', right: '15mm' },
    });
    expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('print an answer without the links that unfold it', async () => {
    const page = await openPage();
    await page.goto(addressOf('/', answer));
    const unfolding = page.locator('.check-line a, .folded-head, .cause-count a, .fix-row a');
    expect(await unfolding.count()).toBeGreaterThan(10);
    await page.emulateMedia({ media: 'print' });
    for (const link of await unfolding.all()) expect(await link.isVisible()).toBe(await link.locator('.cause-share').count() > 0);
    expect(await page.locator('.check-body').first().isVisible()).toBe(true);
    // Whether a finding is present or absent is told on paper; what changes it is not.
    const values = page.locator('.tag-value');
    expect(await values.count()).toBeGreaterThan(0);
    for (const value of await values.all()) expect(await value.isVisible()).toBe(true);
    expect(await page.locator('.tag .icon').filter({ visible: true }).count()).toBe(0);
  });

  it('stand in the README as the tests drew them', async () => {
    mkdirSync(output, { recursive: true });
    const page = await openPage({ context: { viewport: { width: 1280, height: 1100 } } });
    await page.goto(addressOf('/', answer));
    await page.locator('.slash-key').waitFor();
    await page.getByRole('link', { name: /^Show the evidence for/ }).first().click();
    await page.locator('.causes .evidence').first().waitFor();
    // The link leads to its cause; the picture is of the page's top.
    await page.evaluate(() => window.scrollTo(0, 0));
    const file = join(output, 'readme-look-up.png');
    const picture = await page.screenshot({ path: file });
    expect(picture.byteLength).toBeGreaterThan(40_000);
    if (process.env.KEEP_SHOTS) copyFileSync(file, join(projectFolder, 'tests/browser/shots/readme-look-up.png'));
  });
});
