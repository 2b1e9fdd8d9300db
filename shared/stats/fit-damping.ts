import { fitWeights, weightLoss, type WeightProblem } from './fit-weights';
import { type Layout, SYMPTOM } from './layout';
import type { HeldOut } from './leave-one-out';
import { DAMPINGS, symptomFactor } from './symptom-damping';
import { walkDown } from './walk-down';

/** One exponent for each kind of finding. */
export function commonProblem(layout: Layout, heldOut: readonly HeldOut[]): WeightProblem {
  return { heldOut, groupOf: layout.kinds, towards: Float64Array.of(0.8, 0.8, 0.8), ridge: 1 };
}

/** Place of the damping that the search starts from. */
const USUAL = 2;

/** How much less symptoms count where several are present, by the log loss under common exponents; and the held-out columns with it. */
export function fitDamping(layout: Layout, plain: readonly HeldOut[]): { damping: number; heldOut: readonly HeldOut[] } {
  const columnsUnder = (damping: number) => (damping === 0 ? plain : plain.map((record) => damped(layout, record, damping)));
  const best = walkDown(DAMPINGS.length, USUAL, (i) => {
    const problem = commonProblem(layout, columnsUnder(DAMPINGS[i] as number));
    return weightLoss(problem, fitWeights(problem));
  });
  const damping = DAMPINGS[best] as number;
  return { damping, heldOut: columnsUnder(damping) };
}

function damped(layout: Layout, record: HeldOut, damping: number): HeldOut {
  const factor = symptomFactor(record.present, damping);
  if (factor === 1) return record;
  const width = record.logPrior.length;
  const columns = record.columns.map((log, at) => {
    const observable = record.observables[Math.floor(at / width)] as number;
    return layout.kinds[observable] === SYMPTOM ? log * factor : log;
  });
  return { ...record, columns };
}
