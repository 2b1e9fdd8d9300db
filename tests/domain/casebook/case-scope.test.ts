import { describe, expect, it } from 'vitest';
import { bothRows, countRows, rowsInScope, rowsSuspecting } from '../../../shared/domain/casebook/case-scope';
import { monthCounts } from '../../../shared/domain/casebook/case-months';
import { causeShares, deviceShares, roleCounts, symptomShares } from '../../../shared/domain/casebook/count-shares';
import { retractCase } from '../../../shared/domain/casebook/casebook-model';
import { symptomsByCauses } from '../../../shared/domain/casebook/cross-table';
import { recordOfFix } from '../../../shared/domain/casebook/fix-breakdown';
import type { CaseContent } from '../../../shared/schemas/case';
import { plainCase } from '../../server/fixtures/plain-case';
import { smallCases } from '../../server/fixtures/small-cases';
import { smallModel } from '../../server/fixtures/small-model';

const cases = smallCases(240);
const model = smallModel(cases);
/** The naive way: through the records themselves. */
const count = (wanted: (content: CaseContent) => boolean) => cases.filter((record) => wanted(record.content)).length;

const hasSymptom = (id: string) => (c: CaseContent) => c.symptoms.some((s) => s.symptom === id && s.present);
const hasCause = (id: string) => (c: CaseContent) => c.causes.some((cause) => cause.cause === id);
const tried = (id: string) => (c: CaseContent) => c.steps.some((s) => s.kind === 'fix' && s.fixes.some((f) => f.fix === id));

describe('rowsInScope', () => {
  it('counts what going through the records counts, for each filter and for several together', () => {
    const rowsOf = (scope: Parameters<typeof rowsInScope>[1]) => countRows(rowsInScope(model, scope));
    expect(rowsOf({})).toBe(240);
    expect(rowsOf({ device: 'quellbrook-8' })).toBe(count((c) => c.device.startsWith('quellbrook-8')));
    expect(rowsOf({ device: 'quellbrook-8-rev-b' })).toBe(count((c) => c.device === 'quellbrook-8-rev-b'));
    expect(rowsOf({ symptom: 'grey-screen' })).toBe(count(hasSymptom('grey-screen')));
    expect(rowsOf({ cause: 'regulator-dead' })).toBe(count(hasCause('regulator-dead')));
    expect(rowsOf({ fix: 'replace-crystal' })).toBe(count(tried('replace-crystal')));
    expect(rowsOf({ part: 'video-ram' })).toBe(count(hasCause('video-ram-stuck-bit')));
    expect(rowsOf({ device: 'ormadic-duo', symptom: 'garbled-picture', part: 'video-ram' })).toBe(
      count((c) => c.device === 'ormadic-duo-rev-1' && hasSymptom('garbled-picture')(c) && hasCause('video-ram-stuck-bit')(c)),
    );
  });

  it('gives no case for a name that nobody knows, and none of a case taken out', () => {
    expect(countRows(rowsInScope(model, { symptom: 'gremlins' }))).toBe(0);
    expect(countRows(rowsInScope(model, { device: 'gremlins' }))).toBe(0);
    const other = smallModel([plainCase(1), plainCase(2)]);
    retractCase(other, plainCase(1).id);
    expect(countRows(rowsInScope(other, { symptom: 'grey-screen' }))).toBe(1);
  });
});

describe('rowsSuspecting', () => {
  it('holds cases in which the part was checked or a fix of it tried', () => {
    const isSuspected = (c: CaseContent) =>
      tried('replace-video-ram')(c) || c.steps.some((s) => s.kind === 'check' && s.check === 'video-ram-data');
    expect(countRows(rowsSuspecting(model, 'video-ram'))).toBe(count(isSuspected));
    expect(countRows(bothRows(rowsSuspecting(model, 'video-ram'), rowsInScope(model, { part: 'video-ram' })))).toBe(
      count((c) => isSuspected(c) && hasCause('video-ram-stuck-bit')(c)),
    );
  });
});

describe('shares', () => {
  it('of causes, devices, symptoms and parts are those of the records', () => {
    const rows = rowsInScope(model, { symptom: 'grey-screen' });
    const { causes, causeNotFound, of } = causeShares(model, rows);
    expect(of).toBe(count(hasSymptom('grey-screen')));
    expect(causeNotFound).toBe(count((c) => hasSymptom('grey-screen')(c) && c.causes.length === 0));
    for (const cause of causes) {
      expect(cause.count).toBe(count((c) => hasSymptom('grey-screen')(c) && hasCause(cause.id)(c)));
      expect(cause.low).toBeLessThan(cause.count / of);
      expect(cause.high).toBeGreaterThan(cause.count / of);
    }
    expect(causes.map((c) => c.count)).toEqual(causes.map((c) => c.count).sort((a, b) => b - a));
    const duo = deviceShares(model, rows).find((d) => d.id === 'ormadic-duo');
    expect(duo?.count).toBe(count((c) => hasSymptom('grey-screen')(c) && c.device === 'ormadic-duo-rev-1'));
    expect(duo?.of).toBe(count((c) => c.device === 'ormadic-duo-rev-1'));
    expect(symptomShares(model, rows).find((s) => s.id === 'garbled-picture')?.count).toBe(
      count((c) => hasSymptom('grey-screen')(c) && hasSymptom('garbled-picture')(c)),
    );
    expect(roleCounts(model, rows).get('clock-crystal')).toBe(
      count((c) => hasSymptom('grey-screen')(c) && hasCause('clock-crystal-stopped')(c)),
    );
  });

  it('of two causes in one case count it whole for each, and once for a part', () => {
    const both = plainCase(1, {
      causes: [
        { cause: 'clock-crystal-stopped', designators: [] },
        { cause: 'regulator-dead', designators: [] },
      ],
    });
    const small = smallModel([both]);
    const { causes, of } = causeShares(small, rowsInScope(small, {}));
    expect(of).toBe(1);
    expect(causes.map((c) => [c.id, c.count])).toEqual([
      ['clock-crystal-stopped', 1],
      ['regulator-dead', 1],
    ]);
  });

  it('cross symptoms with causes as the records do', () => {
    const { rows, columns, counts } = symptomsByCauses(model, rowsInScope(model, {}), { rows: 2, columns: 3 });
    expect(rows).toHaveLength(2);
    expect(columns).toHaveLength(3);
    rows.forEach((row, y) => {
      columns.forEach((column, x) => {
        expect(counts[y]?.[x]).toBe(count((c) => hasSymptom(row.id)(c) && hasCause(column.id)(c)));
      });
    });
  });
});

describe('monthCounts', () => {
  it('gives every month from the first to the last, over the turn of a year and with empty ones', () => {
    const small = smallModel([
      plainCase(1, { month: '2024-11' }),
      plainCase(2, { month: '2025-02' }),
      plainCase(3, { month: '2025-02' }),
    ]);
    expect(monthCounts(small, rowsInScope(small, {}))).toEqual([
      { month: '2024-11', count: 1 },
      { month: '2024-12', count: 0 },
      { month: '2025-01', count: 0 },
      { month: '2025-02', count: 2 },
    ]);
    expect(monthCounts(small, rowsInScope(small, { symptom: 'dead' }))).toEqual([]);
  });
});

describe('recordOfFix', () => {
  it('counts every try and its result, and draws the share toward one half', () => {
    const attempt = (result: 'cured' | 'no-change' | 'partly') => ({
      steps: [{ kind: 'fix' as const, fixes: [{ fix: 'replace-crystal', designator: null }], result }],
    });
    const results = ['cured', 'cured', 'no-change', 'no-change', 'no-change', 'no-change', 'no-change', 'no-change'] as const;
    const small = smallModel(results.map((result, n) => plainCase(n + 1, attempt(result))));
    const record = recordOfFix(small, 'replace-crystal', rowsInScope(small, {}), { id: 'all', label: 'All' });
    expect(record).toMatchObject({ id: 'all', tried: 8, resolved: 2, noChange: 6, partly: 0, madeWorse: 0 });
    // Posterior mean of Beta(2.5, 6.5).
    expect(record.estimate).toBeCloseTo(2.5 / 9, 12);
    expect(record.low).toBeLessThan(0.25);
    expect(record.high).toBeGreaterThan(0.25);
  });
});
