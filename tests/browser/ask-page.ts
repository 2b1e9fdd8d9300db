import type { Locator, Page } from 'playwright-core';
import { inject } from 'vitest';
import { type Look, openPage } from './harness/open-page';

/** The project's standing example. */
export const STANDING_EXAMPLE = 'grey screen, clock present';

/** An address of the served pages; parameters may repeat. */
export function addressOf(path: string, params: [string, string][] = []): string {
  const query = new URLSearchParams(params).toString();
  return `${inject('serverUrl')}${path}${query === '' ? '' : `?${query}`}`;
}

/** Opens the look-up with these words asked. */
export async function askPage(text: string, look: Look = {}, more: [string, string][] = []): Promise<Page> {
  const page = await openPage(look);
  await page.goto(addressOf('/', [['q', text], ...more]));
  return page;
}

/** Parameters of the address that the page shows. */
export function paramsOf(page: Page, name: string): string[] {
  return new URL(page.url()).searchParams.getAll(name);
}

/** Whole percent as the page writes it; what it writes as less than one is 0. */
export function percentIn(words: string): number {
  if (words.includes('<1%')) return 0;
  const match = /(\d+)%/.exec(words);
  if (!match) throw new Error(`No percent in "${words}".`);
  return Number(match[1]);
}

/** Text of the first thing found, as a reader sees it: what is hidden is left out. */
export async function textOf(found: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what stands in the page unseen is not what is meant
  return found.first().innerText();
}
