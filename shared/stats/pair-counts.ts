import { recordWeight, valueTotal } from './counts';
import { distinctFindings, flatValue } from './findings';
import type { CodedRecord, Layout } from './layout';

/**
 * Counts of findings by twos, for estimators that look at how findings go together; devices are not told apart. All in
 * integers (600ths of a record), so that a retraction is the exact inverse of an addition. With F flat values, O
 * observables and C causes it holds about C F (F + O) numbers: meant for plain tables.
 */
export type PairCounts = {
  readonly layout: Layout;
  readonly causes: Int32Array;
  /** `[f * C + c]`: weight of records of cause c with flat value f; `[o * C + c]`: with any value of observable o. */
  readonly single: Int32Array;
  readonly observed: Int32Array;
  /** `[(f * F + g) * C + c]`: with both f and g; `[(f * O + o) * C + c]`: with f and any value of observable o. */
  readonly pair: Int32Array;
  readonly pairObserved: Int32Array;
};

/** Most numbers that pair counts may hold (100 MB). */
const MOST_CELLS = 25_000_000;

/** Whether a layout is small enough for pair counts. */
export function pairCountsFit(layout: Layout): boolean {
  const F = valueTotal(layout);
  return layout.causeCount * F * (F + layout.kinds.length) <= MOST_CELLS;
}

/**
 * Pair counts of the records that have a cause.
 * @throws RangeError where the table has too many causes and values for counts by twos
 */
export function createPairCounts(layout: Layout, records: readonly CodedRecord[]): PairCounts {
  const C = layout.causeCount;
  const F = valueTotal(layout);
  const O = layout.kinds.length;
  if (!pairCountsFit(layout)) throw new RangeError(`${C} causes and ${F} values are too many to count pairs of values.`);
  const counts: PairCounts = {
    layout,
    causes: new Int32Array(C),
    single: new Int32Array(F * C),
    observed: new Int32Array(O * C),
    pair: new Int32Array(F * F * C),
    pairObserved: new Int32Array(F * O * C),
  };
  for (const record of records) countPairs(counts, record, 1);
  return counts;
}

/** Adds a record (`sign` 1) or takes it out again (-1): the one undoes the other exactly. */
export function countPairs(counts: PairCounts, record: CodedRecord, sign: 1 | -1): void {
  const { layout } = counts;
  const C = layout.causeCount;
  const F = valueTotal(layout);
  const O = layout.kinds.length;
  const findings = distinctFindings(layout, record.findings);
  const flat = findings.map((finding) => flatValue(layout, finding));
  for (const cause of record.causes) {
    const by = sign * recordWeight(record);
    bump(counts.causes, cause, by);
    flat.forEach((f, i) => {
      bump(counts.single, f * C + cause, by);
      bump(counts.observed, (findings[i] as (typeof findings)[0]).observable * C + cause, by);
      flat.forEach((g, j) => {
        if (i === j) return;
        bump(counts.pair, (f * F + g) * C + cause, by);
        bump(counts.pairObserved, (f * O + (findings[j] as (typeof findings)[0]).observable) * C + cause, by);
      });
    });
  }
}

function bump(cells: Int32Array, index: number, by: number): void {
  cells[index] = (cells[index] as number) + by;
}
