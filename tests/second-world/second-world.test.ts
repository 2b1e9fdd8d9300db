import { createHash } from 'node:crypto';
import { describe, expect, it, vi } from 'vitest';
import { vocabulary } from '../../seed/vocabulary';
import { catalogueSchema } from '../../shared/schemas/device';
import { causeRows } from './model/cause-table';
import { misreadRate } from './model/check-responses';
import { writtenRules } from './model/cross-checks';
import { boardModel, knownCheck } from './model/fault-model';
import { syndromes } from './model/syndromes';
import { secondWorld } from './second-world';

vi.setConfig({ testTimeout: 60_000 });

const boards = secondWorld.catalogue.models.flatMap((model) => model.boards.map((board) => ({ ...board, model: model.slug })));
const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0);

/** The model's numbers, written out to ten digits. */
function frozenNumbers(): string {
  const hash = createHash('sha256');
  const put = (name: string, numbers: Iterable<number>) =>
    hash.update(`${name} ${Array.from(numbers, (n) => n.toPrecision(10)).join(' ')}\n`);
  for (const { slug } of boards) {
    const model = boardModel(slug);
    for (const cell of model.cells) put(`${slug} ${cell.cause} ${cell.picture}`, [cell.weight, ...cell.symptoms]);
    for (const check of model.checks) for (const row of model.checkTable(check.slug)) put(`${slug} ${check.slug}`, row);
    for (const fix of model.fixes) for (const row of model.fixTable(fix.slug)) put(`${slug} ${fix.slug}`, row);
  }
  return hash.digest('hex');
}

describe('secondWorld.catalogue', () => {
  it('is a valid catalogue of 5 to 7 models and 8 to 12 boards in several categories', () => {
    catalogueSchema.parse(secondWorld.catalogue);
    const { models } = secondWorld.catalogue;
    expect(models.length).toBeGreaterThanOrEqual(5);
    expect(models.length).toBeLessThanOrEqual(7);
    expect(boards.length).toBeGreaterThanOrEqual(8);
    expect(boards.length).toBeLessThanOrEqual(12);
    expect(new Set(models.map((model) => model.category)).size).toBeGreaterThanOrEqual(4);
  });

  it('shares numbered parts between boards of different models', () => {
    const users = new Map<string, Set<string>>();
    for (const board of boards) {
      for (const part of board.parts) {
        if (part.partNumber === null) continue;
        const key = `${part.role} ${part.partNumber}`;
        users.set(key, (users.get(key) ?? new Set()).add(board.model));
      }
    }
    expect([...users.values()].filter((models) => models.size > 1).length).toBeGreaterThan(8);
  });

  it('uses each designator of a board once and known roles only', () => {
    const roles = new Set(vocabulary.roles.map((role) => role.slug));
    for (const board of boards) {
      expect(new Set(board.parts.map((part) => part.designator)).size).toBe(board.parts.length);
      expect(board.parts.filter((part) => !roles.has(part.role))).toEqual([]);
    }
  });
});

describe('secondWorld.prior', () => {
  it('sums to 1 on every board over known causes of the category', () => {
    for (const board of boards) {
      const category = secondWorld.catalogue.models.find((model) => model.slug === board.model)!.category;
      const prior = secondWorld.prior(board.slug);
      expect(sum(prior.values())).toBeCloseTo(1, 12);
      for (const cause of prior.keys())
        expect(vocabulary.causes.find((entry) => entry.slug === cause)?.categories).toContain(category);
    }
  });

  it('has a heavy tail: most causes are rare and together still common', () => {
    for (const board of boards) {
      const falling = [...secondWorld.prior(board.slug).values()].sort((a, b) => b - a);
      const rarerHalf = sum(falling.slice(Math.floor(falling.length / 2)));
      expect(rarerHalf).toBeGreaterThan(0.07);
      expect(falling[0]! / falling.at(-1)!).toBeGreaterThan(30);
    }
  });

  it('uses 70 to 110 causes in the whole world, no board all of them', () => {
    const all = new Set(boards.flatMap((board) => [...secondWorld.prior(board.slug).keys()]));
    expect(all.size).toBeGreaterThanOrEqual(70);
    expect(all.size).toBeLessThanOrEqual(110);
    expect(all.size).toBe(causeRows.length);
    for (const board of boards) expect(secondWorld.prior(board.slug).size).toBeLessThan(all.size);
  });

  it('names the boards there are when asked for one that is not', () => {
    expect(() => secondWorld.prior('no-such-board')).toThrow(/No board "no-such-board".*odrani-tumble-t1/);
  });
});

/** How far the chances of any cell are from summing to 1. */
const worstSum = (table: Float64Array[]): number =>
  Math.max(...Array.from(table[0]!, (_, c) => Math.abs(sum(table.map((row) => row[c]!)) - 1)));

describe('the written tables', () => {
  it('name only known symptoms, causes, roles, checks and outcomes, and nothing that is never used', () => {
    const symptoms = new Set(vocabulary.symptoms.map((entry) => entry.slug));
    for (const { symptoms: kernel } of Object.values(syndromes))
      expect(Object.keys(kernel).filter((slug) => !symptoms.has(slug))).toEqual([]);
    const used = new Set<string>(causeRows.flatMap((row) => row.pictures.map(([name]) => name)));
    expect([...used].sort()).toEqual(Object.keys(syndromes).sort());
    expect(causeRows.filter((row) => row.pictures.length < 1 || row.pictures.length > 3)).toEqual([]);
    const known = new Set([
      ...causeRows.map((row) => row.cause),
      ...vocabulary.roles.map((role) => `role:${role.slug}`),
      ...Object.values(syndromes).map(({ state }) => `state:${state}`),
    ]);
    for (const { check, outcome, when } of writtenRules) {
      expect(knownCheck(check).outcomes.map((entry) => entry.slug)).toContain(outcome);
      expect(when.filter((key) => !known.has(key))).toEqual([]);
    }
  });

  it('give every check of every board chances that sum to 1 in each cell', () => {
    for (const { slug } of boards) {
      const model = boardModel(slug);
      for (const check of model.checks) {
        expect(worstSum(model.checkTable(check.slug))).toBeLessThan(1e-9);
      }
      for (const fix of model.fixes) {
        expect(worstSum(model.fixTable(fix.slug))).toBeLessThan(1e-9);
      }
    }
  });

  it('make a dead supply hide what a probe would see, and misreading depend on instrument and stage', () => {
    const model = boardModel('odrani-tumble-t1');
    const dead = model.cells.findIndex((cell) => cell.cause === 'external-supply-dead');
    const place = knownCheck('data-lines').outcomes.findIndex((outcome) => outcome.slug === 'none-active');
    expect(model.checkTable('data-lines')[place]![dead]).toBeGreaterThan(0.8);
    expect(misreadRate(knownCheck('ram-temperature'))).toBeGreaterThan(3 * misreadRate(knownCheck('supply-apart')));
  });
});

describe('the frozen model', () => {
  it('has the numbers it was written with', () => {
    expect(frozenNumbers()).toBe('1594c56ac93e8d217c3904a8a2afbb74c664b11d05bdc9d9a384c0002ca2a348');
  });

  it('draws the cases it drew when it was written', () => {
    const drawn = JSON.stringify(secondWorld.drawCases(1, 100));
    expect(createHash('sha256').update(drawn).digest('hex')).toBe(
      'f7c34be0fad1a3b7c4714c34211a63ec64ef7c628814e7cff83350f70f378d2f',
    );
  });
});
