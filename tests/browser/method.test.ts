import AxeBuilder from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDb } from '../../server/db';
import { saveEvaluation } from '../../server/repositories/evaluation-repository';
import { addressOf, textOf } from './ask-page';
import { demoDatabase } from './harness/demo-database';
import { openPage } from './harness/open-page';
import { type RunningServer, startServer } from './harness/start-server';

const scores = { estimator: 'weighted naive Bayes', accuracy: 0.5, top3: 0.75, logLoss: 2, brier: 0.6, ece: 0.02 };

/** As `evaluate` keeps it: stated at 15 %, it was that cause in 30 %; stated at 85 %, in 80 %. */
const kept = {
  rows: 4200,
  folds: 10,
  repeats: 3,
  fitRecords: 500,
  cuts: [{ cut: 'before the first fix', results: [scores, { ...scores, estimator: 'prior' }] }],
  brackets: {
    pairs: 1200,
    held: 0.25,
    width: 0.18,
    bins: [
      { low: 0.1, high: 0.2, count: 900, stated: 0.15, bracketLow: 0.08, bracketHigh: 0.25, observed: 0.3 },
      { low: 0.8, high: 0.9, count: 300, stated: 0.85, bracketLow: 0.75, bracketHigh: 0.93, observed: 0.8 },
    ],
  },
  byDevice: [{ device: 'quellbrook-8-rev-a', label: 'Quellbrook 8, revision A', count: 300, accuracy: 0.4, logLoss: 2.5 }],
  byCause: [{ cause: 'crystal-dead', label: 'Crystal dead', count: 60, accuracy: 0.9, logLoss: 0.4 }],
};

describe('the method page of a casebook that was never put to the test', () => {
  it('says so, and how to do it', async () => {
    const page = await openPage({ scripts: false });
    await page.goto(addressOf('/method'));
    const told = await textOf(page.locator('main'));
    expect(told).toContain('has not been put to the test yet');
    expect(told).toContain('npm run --silent cli -- evaluate --demo');
    expect(told).toContain('takes some ten minutes');
    expect(await page.locator('.reliability').count()).toBe(0);
  });
});

describe('the method page of a casebook that was put to the test', () => {
  let server: RunningServer;
  let remove: () => void;
  beforeAll(async () => {
    const database = await demoDatabase();
    remove = database.remove;
    const db = createDb(`file:${database.file}`);
    const at = new Date('2026-01-02T03:04:05Z');
    await saveEvaluation(db, { id: 'a'.repeat(16), at, document: JSON.stringify(kept), recordCount: kept.rows });
    await db.$disconnect();
    server = await startServer(database.file);
  }, 180_000);
  afterAll(async () => {
    await server?.stop();
    remove?.();
  });

  it('draws the stated chances against what was, and says the same in words and in a table', async () => {
    const page = await openPage({ scripts: false });
    await page.goto(`${server.url}/method`);
    const drawing = page.locator('.reliability svg');
    expect(await drawing.locator('circle').count()).toBe(2);
    // 30 % observed lies lower in the drawing than 80 %.
    const heights = await drawing.locator('circle').evaluateAll((points) => points.map((p) => Number(p.getAttribute('cy'))));
    expect(heights[0]).toBeGreaterThan(heights[1] as number);
    expect(await drawing.getAttribute('aria-label')).toContain('15% stated, 30% observed');
    await page.locator('.reliability summary').click();
    expect(await textOf(page.locator('.reliability tbody tr').first())).toContain('30%');
    const told = await textOf(page.locator('main'));
    expect(told).toContain('4,200 cases in 10 parts, 3 times over');
    expect(told).toContain('25% of the stated chances');
    expect(told).toContain('Quellbrook 8, revision A (first right in 40%)');
  });

  it('folds the tables of devices and causes, and opens them', async () => {
    const page = await openPage();
    await page.goto(`${server.url}/method`);
    const row = page.getByRole('rowheader', { name: 'Crystal dead' });
    expect(await row.isVisible()).toBe(false);
    await page.getByText('Cause by cause').click();
    expect(await row.isVisible()).toBe(true);
  });

  it.each(['desktop', 'phone'] as const)('passes axe, light and dark, on a %s', async (screen) => {
    const page = await openPage({ screen });
    await page.goto(`${server.url}/method`);
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    const broken = async () =>
      (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => `${id} ${nodes[0]?.target}`);
    expect(await broken()).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await broken()).toEqual([]);
    // Wider than the screen would mean scrolling sideways.
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  });
});
