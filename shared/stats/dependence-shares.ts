import { COUNT_UNIT, valueTotal } from './counts';
import { distinctFindings, flatValue } from './findings';
import type { CodedFinding } from './layout';
import type { PairCounts } from './pair-counts';

/** Records that what a share is pulled towards is worth: P(v | c) towards P(v), and P(v | c, u) towards P(v | c). */
export type Shrinkage = { single: number; pair: number };

/** Findings as the shares see them: each once, with its flat value. */
export type FlatFinding = { observable: number; flat: number };

/** Distinct findings with their flat values; throws RangeError where one is out of range. */
export function flatFindings({ layout }: PairCounts, findings: readonly CodedFinding[]): FlatFinding[] {
  return distinctFindings(layout, findings).map((finding) => ({
    observable: finding.observable,
    flat: flatValue(layout, finding),
  }));
}

/** log P(c) with one record added to each cause; length causeCount. */
export function logCauseShares({ causes }: PairCounts): Float64Array {
  const total = causes.reduce((sum, n) => sum + n, 0) + causes.length * COUNT_UNIT;
  return Float64Array.from(causes, (n) => Math.log((n + COUNT_UNIT) / total));
}

/** P(v | c) for all causes, pulled towards P(v) (half a record added to each value). Length causeCount. */
export function singleShares(counts: PairCounts, { observable, flat }: FlatFinding, shrinkage: Shrinkage): Float64Array {
  const C = counts.layout.causeCount;
  const shares = new Float64Array(C);
  let with_ = 0.5 * COUNT_UNIT;
  let seen = 0.5 * COUNT_UNIT * (counts.layout.valueCounts[observable] as number);
  for (let c = 0; c < C; c += 1) {
    with_ += counts.single[flat * C + c] as number;
    seen += counts.observed[observable * C + c] as number;
  }
  const worth = shrinkage.single * COUNT_UNIT;
  for (let c = 0; c < C; c += 1) {
    shares[c] =
      ((counts.single[flat * C + c] as number) + worth * (with_ / seen)) /
      ((counts.observed[observable * C + c] as number) + worth);
  }
  return shares;
}

/**
 * Multiplies `into` by P(v | c, u) for all causes: the share of `child` among records that also have `parent`, pulled
 * towards P(v | c), which is `childShares`.
 */
export function multiplyPairShares(
  counts: PairCounts,
  {
    parent,
    child,
    childShares,
    shrinkage,
  }: { parent: FlatFinding; child: FlatFinding; childShares: Float64Array; shrinkage: Shrinkage },
  into: Float64Array,
): void {
  const C = counts.layout.causeCount;
  const worth = shrinkage.pair * COUNT_UNIT;
  const same = parent.observable === child.observable;
  const at = (parent.flat * valueTotal(counts.layout) + child.flat) * C;
  const seenAt = (parent.flat * counts.layout.kinds.length + child.observable) * C;
  for (let c = 0; c < C; c += 1) {
    const share = childShares[c] as number;
    // Two values of one observable contradict each other; neither says anything about the other then.
    const factor = same
      ? share
      : ((counts.pair[at + c] as number) + worth * share) / ((counts.pairObserved[seenAt + c] as number) + worth);
    into[c] = (into[c] as number) * factor;
  }
}
