import { fitWeights, weightLoss, type WeightProblem } from './fit-weights';
import { type Layout, SYMPTOM } from './layout';
import type { HeldOut } from './leave-one-out';
import { DAMPINGS, symptomFactor } from './symptom-damping';

/** One exponent for each kind of finding. */
export function commonProblem(layout: Layout, heldOut: readonly HeldOut[]): WeightProblem {
  return { heldOut, groupOf: layout.kinds, towards: Float64Array.of(0.8, 0.8, 0.8), ridge: 1 };
}

/** How much less symptoms count where several are present, by the log loss under common exponents; and the held-out columns with it. */
export function fitDamping(layout: Layout, plain: readonly HeldOut[]): { damping: number; heldOut: readonly HeldOut[] } {
  let best = { damping: 0, heldOut: plain, loss: Number.POSITIVE_INFINITY };
  for (const damping of DAMPINGS) {
    const heldOut = damping === 0 ? plain : plain.map((record) => damped(layout, record, damping));
    const problem = commonProblem(layout, heldOut);
    const loss = weightLoss(problem, fitWeights(problem));
    if (loss < best.loss) best = { damping, heldOut, loss };
  }
  return best;
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
