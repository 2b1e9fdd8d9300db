import { fitWeights, weightLoss, type WeightProblem } from './fit-weights';
import { CHECK, FIX, type Layout, SYMPTOM } from './layout';
import type { HeldOut } from './leave-one-out';
import { poolByKind } from './pool-by-kind';
import { DAMPINGS, symptomFactor } from './symptom-damping';
import { walkDown } from './walk-down';

/** Kinds as the observables of pooled records. */
const KINDS = [SYMPTOM, CHECK, FIX];

/** One exponent for each kind of finding, over records pooled by kind. */
export function commonProblem(pooled: readonly HeldOut[]): WeightProblem {
  return { heldOut: pooled, groupOf: KINDS, towards: Float64Array.of(0.8, 0.8, 0.8), ridge: 1 };
}

/** Place of the damping that the search starts from. */
const USUAL = 2;

/** How much less symptoms count where several are present, by the log loss under common exponents; and the held-out columns with it. */
export function fitDamping(layout: Layout, plain: readonly HeldOut[]): { damping: number; heldOut: readonly HeldOut[] } {
  const under = (damping: number, kinds: ArrayLike<number>, records: readonly HeldOut[]) =>
    damping === 0 ? records : records.map((record) => damped(kinds, record, damping));
  const pooled = poolByKind(layout.kinds, plain);
  const best = walkDown(DAMPINGS.length, USUAL, (i) => {
    const problem = commonProblem(under(DAMPINGS[i] as number, KINDS, pooled));
    return weightLoss(problem, fitWeights(problem));
  });
  const damping = DAMPINGS[best] as number;
  return { damping, heldOut: under(damping, layout.kinds, plain) };
}

function damped(kinds: ArrayLike<number>, record: HeldOut, damping: number): HeldOut {
  const factor = symptomFactor(record.present, damping);
  if (factor === 1) return record;
  const width = record.logPrior.length;
  const columns = record.columns.map((log, at) => {
    const observable = record.observables[Math.floor(at / width)] as number;
    return kinds[observable] === SYMPTOM ? log * factor : log;
  });
  return { ...record, columns };
}
