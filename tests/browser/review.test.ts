import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import AxeBuilder from '@axe-core/playwright';
import Database from 'better-sqlite3';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoDatabase } from './harness/demo-database';
import { openPage } from './harness/open-page';
import { type RunningServer, startServer } from './harness/start-server';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const run = promisify(execFile);
/** These change what is stored, so they have a server of their own. */
let server: RunningServer;
let database: { file: string; remove: () => void };
beforeAll(async () => {
  database = await demoDatabase();
  server = await startServer(database.file);
});
afterAll(async () => {
  await server?.stop();
  database?.remove();
});

async function enter(name: string, password: string, path = '/review'): Promise<Page> {
  const page = await openPage({ expected: /./ });
  await page.goto(`${server.url}/sign-in?next=${path}`);
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.locator('.site-account', { hasText: name }).waitFor();
  return page;
}

const moderator = () => enter('demo-moderator', 'marrow-lane-reviewing');
const keeper = () => enter('demo-keeper', 'marrow-lane-keeping');
const waiting = () => countOf('SELECT count(*) AS n FROM WaitingCase');

function countOf(sql: string): number {
  const opened = new Database(database.file, { readonly: true });
  const { n } = opened.prepare(sql).get() as { n: number };
  opened.close();
  return n;
}

function rowsOf(sql: string): unknown[] {
  const opened = new Database(database.file, { readonly: true });
  const rows = opened.prepare(sql).all();
  opened.close();
  return rows;
}

/** What a procedure answers. */
async function ask<T>(page: Page, procedure: string, input: object): Promise<T> {
  const answer = await page.request.get(`${server.url}/api/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`);
  return ((await answer.json()) as { result: { data: T } }).result.data;
}

/** Decides on the case shown as its findings suggest. Returns what was done. */
async function decide(page: Page): Promise<string> {
  await page.locator('[data-claim="mine"]').waitFor();
  const again = page.getByRole('button', { name: 'The same repair' });
  if ((await again.count()) > 0) {
    await again.first().click();
    return 'merged';
  }
  if ((await page.locator('.detail-mark').count()) > 0) {
    await page.locator('summary', { hasText: 'Decline' }).click();
    await page.getByLabel('Why', { exact: true }).selectOption('says-who');
    await page.getByRole('button', { name: 'Decline it' }).click();
    return 'declined';
  }
  const sound = await page.getByText('Nothing in it contradicts anything else.').count();
  const worded = await page.getByRole('heading', { name: 'Words that it proposes' }).count();
  if (sound === 0 || worded > 0) {
    await page.locator('summary', { hasText: 'Ask for changes' }).click();
    await page.getByLabel('Where').selectOption('causes');
    await page.getByLabel('What should change there').first().fill('Please say how you know that it was this one.');
    await page.getByRole('button', { name: 'Ask for these changes' }).click();
    return 'asked';
  }
  await page.getByRole('button', { name: 'Accept and publish' }).click();
  return 'accepted';
}

describe('a moderator', () => {
  it('races another for the same case: one has it, the other is told who', async () => {
    const [one, two] = [await moderator(), await keeper()];
    const href = await one.locator('.queue-line a').first().getAttribute('href');
    await Promise.all([one.goto(`${server.url}${href}`), two.goto(`${server.url}${href}`)]);
    await Promise.all([one, two].map((page) => page.locator('[data-claim="mine"], [data-claim="other"]').waitFor()));
    const states = await Promise.all([one, two].map((page) => page.locator('[data-claim]').getAttribute('data-claim')));
    expect([...states].sort()).toEqual(['mine', 'other']);
    const [winner, loser] = states[0] === 'mine' ? [one, two] : [two, one];
    expect(await loser.locator('.review-bar [role="alert"], .review-bar').first().innerText()).toMatch(
      /demo-(moderator|keeper) is looking at/,
    );
    const before = waiting();
    await loser.getByRole('button', { name: 'Accept and publish' }).click();
    await loser.locator('.fault-summary').waitFor();
    expect(waiting()).toBe(before);
    await winner.getByRole('button', { name: 'Accept and publish' }).click();
    await winner.locator('.review-done').waitFor();
    expect(waiting()).toBe(before - 1);
  });

  it('works through twenty mixed submissions, each decision leading on to the next', { timeout: 600_000 }, async () => {
    const page = await moderator();
    const before = waiting();
    expect(before).toBeGreaterThanOrEqual(20);
    await page.getByRole('link', { name: 'Begin with the next one' }).click();
    const done: Record<string, number> = {};
    for (let n = 0; n < 20; n += 1) {
      await page.waitForURL(/\/review\/[a-z2-7]{16}/);
      const from = page.url();
      const what = await decide(page);
      done[what] = (done[what] ?? 0) + 1;
      await page.waitForURL((url) => url.href !== from);
      await page.locator('.review-done').waitFor();
    }
    expect(waiting()).toBe(before - 20);
    expect(Object.keys(done).sort()).toEqual(['accepted', 'asked', 'declined', 'merged']);
    expect(countOf("SELECT count(*) AS n FROM LogEntry WHERE kind = 'case-accepted'")).toBeGreaterThanOrEqual(done.accepted ?? 0);
    await run('node', ['--import', 'tsx', 'server/cli/index.ts', 'log', 'verify'], {
      env: { ...process.env, DATABASE_URL: `file:${database.file}` },
    });
  });
  it('asks for changes, which whoever posted the case finds at the field', async () => {
    // The walk above asked for some.
    const page = await enter('demo-contributor', 'marrow-lane-posting', '/submissions');
    await page
      .getByRole('button', { name: /^Make the changes/ })
      .first()
      .click();
    const asked = page.getByRole('region', { name: 'Changes asked for' });
    await asked.waitFor();
    const reason = 'Please say how you know that it was this one.';
    expect(await page.locator('#post-causes').innerText()).toContain(reason);
    await asked.getByRole('link', { name: `Cause: ${reason}` }).click();
    expect(await page.evaluate(() => document.activeElement?.closest('#post-causes') !== null)).toBe(true);
    const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.target}`)).toEqual([]);
  });

  it('takes a published case back, and the look-up counts without it at once; restoring brings it back', async () => {
    const page = await moderator();
    const cases = async () => {
      await page.goto(`${server.url}/cases`);
      return page.locator('.case-line a').first().getAttribute('href');
    };
    const href = await cases();
    const id = href?.split('/').at(-1) ?? '';
    const total = async () => {
      const answer = await page.request.get(`${server.url}/api/trpc/casebook.overview`);
      return ((await answer.json()) as { result: { data: { cases: number } } }).result.data.cases;
    };
    const { symptoms } = await ask<{ symptoms: { id: string; present: boolean }[] }>(page, 'casebook.getCase', { id });
    const set = symptoms
      .filter((s) => s.present)
      .slice(0, 1)
      .map((s) => ({ kind: 'symptom', id: s.id, value: 'present' }));
    const lookUp = async () => {
      const { cases: counted, causes } = await ask<{ cases: { matching: number }; causes: { probability: number }[] }>(
        page,
        'lookup.ask',
        { set },
      );
      return { matching: counted.matching, first: causes[0]?.probability };
    };
    /** What somebody who is not signed in reads. */
    const read = async () => {
      const codes = set.map((finding) => `f=${finding.kind}.${finding.id}.${finding.value}`).join('&');
      const html = await (await fetch(`${server.url}/?${codes}`)).text();
      return Number(/([\d,]+) cases? of [\d,]+ carry/.exec(html.replaceAll('&nbsp;', ' ').replaceAll('\u00a0', ' '))?.[1]?.replace(',', ''));
    };
    const asked = await lookUp();
    expect([await read(), await read()]).toEqual([asked.matching, asked.matching]);
    const before = await total();
    await page.goto(`${server.url}/review/${id}`);
    await page.locator('summary', { hasText: 'Take it back' }).click();
    await page.getByLabel('Why, for whoever posted it').fill('The cause was another one after all.');
    await page.getByRole('button', { name: 'Take it out of the casebook' }).click();
    await page.locator('.review-done').waitFor();
    expect(await total()).toBe(before - 1);
    const without = await lookUp();
    expect(without.matching).toBe(asked.matching - 1);
    expect(await read()).toBe(asked.matching - 1);
    expect(without.first).not.toBe(asked.first);
    expect(await cases()).not.toBe(href);
    await page.goto(`${server.url}/review/${id}`);
    await page.getByRole('button', { name: 'Publish it again' }).click();
    await page.locator('.review-done').waitFor();
    expect(await total()).toBe(before);
    expect(await lookUp()).toEqual(asked);
    expect(await read()).toBe(asked.matching);
  });

  it('leaves no trace of who posted or decided on any page, file, feed or answer that is open to everybody', async () => {
    const accounts = rowsOf('SELECT id, username FROM User') as { id: string; username: string }[];
    const published = rowsOf("SELECT caseId FROM CaseStatusChange WHERE toStatus = 'accepted'") as { caseId: string }[];
    expect(accounts.length).toBeGreaterThanOrEqual(4);
    expect(published.length).toBeGreaterThan(0);
    const pages = [...OPEN_PAGES, ...published.slice(0, 10).map(({ caseId }) => `/cases/${caseId}`)];
    for (const path of pages) {
      const response = await fetch(`${server.url}${path}`);
      expect(response.status, path).toBe(200);
      const text = await response.text();
      for (const { id, username } of accounts)
        expect(text.includes(id) || text.includes(username), `${path} names ${username}`).toBe(false);
    }
  });
});

/** Everything that is served to whoever asks, but the page to sign in on, which shows the demo's accounts. */
const OPEN_PAGES = [
  '/',
  '/?q=grey+screen',
  '/plan?q=grey+screen',
  '/casebook',
  '/cases',
  '/symptoms',
  '/symptoms/grey-screen',
  '/devices',
  '/devices/quellbrook-8',
  '/devices/quellbrook-8-rev-a/readings',
  '/parts',
  '/parts/video-ram',
  '/fixes',
  '/fixes/replace-video-ram',
  '/search?q=screen',
  '/method',
  '/safety',
  '/words',
  '/log',
  '/data',
  '/bench',
  '/post',
  '/data/datapackage.json',
  '/data/cases.jsonl',
  '/data/cases.csv',
  '/cases/feed.atom',
  '/symptoms/grey-screen/feed.atom',
  '/api/v1/cases',
  '/sitemap.xml',
  '/readyz',
  '/healthz',
];

describe('the review pages', () => {
  it('pass axe, and fit 360 pixels', async () => {
    const page = await moderator();
    const item = await page.locator('.queue-line a').first().getAttribute('href');
    await page.setViewportSize({ width: 360, height: 800 });
    for (const path of ['/review', item ?? '', `${item}/edit`, '/review/reports']) {
      await page.goto(`${server.url}${path}`);
      await page.locator('h1').waitFor();
      const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
      expect(violations.map((v) => `${path}: ${v.id} ${v.nodes[0]?.target}`)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360);
    }
  });

  it('are led through by keys in the list alone', async () => {
    const page = await moderator();
    await page.keyboard.press('j');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('BODY');
    await page.locator('.queue-line a').first().focus();
    await page.keyboard.press('j');
    const focused = await page.evaluate(() => document.activeElement?.getAttribute('href'));
    expect(focused).toBe(await page.locator('.queue-line a').nth(1).getAttribute('href'));
  });
});
