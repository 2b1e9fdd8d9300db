import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** WCAG 2.2, levels A and AA, and what axe calls best practice. */
export const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** The pages that anybody may open, each with what is asked of it. */
export const pages: [string, string][] = [
  ['the first visit', '/'],
  ['an answer', '/?q=grey+screen%2C+clock+present%2C+zzyzx&on=quellbrook-8&not=symptom.no-sound&why=crystal-dead'],
  ['an answer with all that can be unfolded', '/?q=grey+screen%2C+clock+present&how=rails-short-test&rung=2&rest=1&fixes=1'],
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
export async function unfold(page: Page): Promise<void> {
  await page.locator('.slash-key').waitFor();
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) {
      fold.removeAttribute('name');
      fold.open = true;
    }
  });
}

/** What axe finds: the rule, and where. The dark theme changes colours alone, so there it looks at these alone. */
async function found(page: Page, theme: 'light' | 'dark'): Promise<string[]> {
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

/** What axe finds on an open page, light and then dark, everything unfolded. */
export async function lookOver(page: Page): Promise<string[]> {
  await unfold(page);
  const light = await found(page, 'light');
  await page.emulateMedia({ colorScheme: 'dark' });
  return [...light, ...(await found(page, 'dark'))];
}
