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

  it.each(['/cases/aaaaaaaaaaaaaaaa', '/cases/Robert%27);--', '/devices/no-such-machine', '/symptoms/gremlins', '/parts/Robert', '/fixes/x', '/nowhere'])(
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
    expect(await page.locator('#quellbrook-8-rev-a table tbody tr').count()).toBeGreaterThan(10);
    await page.getByRole('link', { name: 'Look up on this board' }).first().click();
    await page.waitForURL(/\?on=/);
    expect(await page.locator('#device').inputValue()).toMatch(/^quellbrook-8/);
  });
});

describe('what a case mentions', () => {
  it('leads to its page, and from there back to the case', async () => {
    const page = await openPage();
    await page.goto(addressOf('/cases?symptom=grey-screen'));
    const address = await page.locator('.case-line a').first().getAttribute('href');
    await page.goto(addressOf(address ?? ''));
    const cause = page.locator('.facts a').first();
    for (const link of [page.locator('.timeline a[href^="/symptoms/"]').first(), cause]) {
      expect(await link.getAttribute('href')).toMatch(/^\/(symptoms|parts)\//);
    }
    await page.locator('.timeline a[href="/symptoms/grey-screen"]').first().click();
    await page.waitForURL(/\/symptoms\/grey-screen/);
    await page.locator('a', { hasText: /^All\s.*\scases?$/ }).click();
    await page.waitForURL(/\/cases\?symptom=grey-screen/);
    expect(await page.locator(`.case-line a[href="${address}"]`).count()).toBe(1);
  });
});

describe('a page of figures', () => {
  it('states its finding in the title and in the preview of its link', async () => {
    const page = await openPage({ scripts: false });
    await page.goto(addressOf('/symptoms/grey-screen?on=quellbrook-8'));
    expect(await page.title()).toMatch(/^Grey screen on Quellbrook 8: \d+% .+, \d+\scases · Second Bench$/);
    const preview = await page.locator('meta[property="og:title"]').getAttribute('content');
    expect(`${preview} · Second Bench`).toBe(await page.title());
  });

  it('draws as many bars as it has rows, and says the same in figures', async () => {
    const page = await openPage({ scripts: false });
    await page.goto(addressOf('/symptoms/grey-screen'));
    const rows = page.locator('.plot-table').first().locator('tbody tr');
    const widths = await rows.locator('rect.bar').evaluateAll((bars) => bars.map((bar) => bar.getBoundingClientRect().width));
    const shares = (await rows.locator('.plot-counts').allTextContents()).map((text) => {
      const [, count, of] = /([\d,]+) of ([\d,]+)/.exec(text) ?? [];
      return Number(count?.replace(',', '')) / Number(of?.replace(',', ''));
    });
    expect(widths).toHaveLength(await rows.count());
    widths.forEach((width, at) => expect(width / (widths[0] ?? 1)).toBeCloseTo((shares[at] ?? 0) / (shares[0] ?? 1), 1));
  });
});

describe('open data', () => {
  it('is served with its own media types: a file, an answer, a feed', async () => {
    const types = { '/data/roles.csv': 'text/csv', '/data/datapackage.json': 'application/json', '/api/v1/parts': 'application/json' };
    for (const [path, type] of Object.entries({ ...types, '/devices/quellbrook-8/feed.atom': 'application/atom+xml' })) {
      const response = await fetch(addressOf(path));
      expect(response.status, path).toBe(200);
      expect(response.headers.get('content-type'), path).toContain(type);
      expect((await response.text()).length, path).toBeGreaterThan(500);
    }
    const problem = await fetch(addressOf('/api/v1/nowhere'));
    expect([problem.status, problem.headers.get('content-type')]).toEqual([404, 'application/problem+json']);
  });
});

describe('the search box', () => {
  it('offers pages while somebody types, by keyboard alone', async () => {
    const page = await openPage();
    await page.goto(addressOf('/casebook'));
    await page.locator('.slash-key').waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type('grey screen');
    await page.locator('#site-search-list [role=option]').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/symptoms\/grey-screen/);
  });
});

describe('every page', () => {
  it.each(['/', '/casebook', '/symptoms', '/parts', '/fixes', '/data', '/cases', '/devices', '/method', '/safety', '/words', '/plan?q=grey+screen'])(
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
