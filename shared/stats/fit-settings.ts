import { addRecord, type Counts, createCounts } from './counts';
import { fitConcentrations } from './fit-concentrations';
import { fitPrior } from './fit-prior';
import { fitWeights, weightLoss } from './fit-weights';
import type { CodedRecord, Layout } from './layout';
import { type HeldOut, leaveOneOut } from './leave-one-out';
import { createRandom, shuffle } from './random';
import { defaultSettings, type Settings } from './settings';
import { createEstimator } from './weighted-naive-bayes';

export type FitOptions = {
  /** Seed of the sample of records that the fit looks at. */
  seed?: number;
  /** Records scored by leave-one-out; the counts always hold all of them. */
  maxRecords?: number;
  /** Whether causes on no record are possible; off for plain tables. */
  unlisted?: boolean;
};

/** Ridge strengths tried: records that a deviation of 1 from the common exponent costs, roughly. */
const RIDGES = [0.5, 2, 8, 32];
const SHRINKAGE_FACTORS = [0.25, 0.5, 1, 2, 4];

/**
 * Fits all settings to records: concentrations of prior and shares, then one common exponent per kind, then one per
 * observable, all on exact leave-one-out scores at the moments of `CUTS`. Deterministic in its arguments.
 */
export function fitSettings(layout: Layout, records: readonly CodedRecord[], options: FitOptions = {}): Settings {
  const start: Settings = { ...defaultSettings(layout), unlisted: options.unlisted ?? true };
  const counts = createCounts(layout);
  for (const record of records) addRecord(counts, record);
  const resolved = records.filter((record) => record.causes.length > 0);
  if (resolved.length < 20) return start;
  const sample = shuffle([...resolved], createRandom(options.seed ?? 1)).slice(0, options.maxRecords ?? 900);
  const shaped = fitConcentrations(counts, fitPrior(counts, start, sample), sample);
  return fitExponents(counts, shaped, sample);
}

/** The factor on the shrinkage is chosen by leave-one-out log loss under common exponents; then exponents are fitted. */
function fitExponents(counts: Counts, settings: Settings, sample: readonly CodedRecord[]): Settings {
  const { layout } = counts;
  const tried = SHRINKAGE_FACTORS.map((factor) => {
    const scaled = scaleShrinkage(settings, factor);
    const few = sample.slice(0, Math.max(300, Math.min(sample.length, 500)));
    const heldOut = leaveOneOut(layout, { counts, estimator: createEstimator(layout, counts, scaled), records: few });
    const problem = commonProblem(layout, heldOut);
    return { scaled, loss: weightLoss(problem, fitWeights(problem)) };
  });
  const best = tried.reduce((a, b) => (b.loss < a.loss ? b : a)).scaled;
  const heldOut = leaveOneOut(layout, { counts, estimator: createEstimator(layout, counts, best), records: sample });
  return { ...best, weights: [...fitObservableWeights(layout, heldOut)] };
}

function scaleShrinkage(settings: Settings, factor: number): Settings {
  return { ...settings, concentrationFactors: settings.concentrationFactors.map((f) => f * factor) };
}

function commonProblem(layout: Layout, heldOut: readonly HeldOut[]) {
  return { heldOut, groupOf: layout.kinds, towards: Float64Array.of(0.8, 0.8, 0.8), ridge: 1 };
}

/** Exponents per observable, pulled to their kind's common one as strongly as predicts best across two halves. */
export function fitObservableWeights(layout: Layout, heldOut: readonly HeldOut[]): Float64Array {
  const common = fitWeights(commonProblem(layout, heldOut));
  const towards = Float64Array.from(layout.kinds, (kind) => common[kind] as number);
  const groupOf = Float64Array.from(layout.kinds, (_, o) => o);
  const halves = [0, 1].map((half) => heldOut.filter((_, i) => i % 2 === half));
  const problem = (of: readonly HeldOut[], ridge: number) => ({ heldOut: of, groupOf, towards, ridge });
  let best = { ridge: 0, loss: Number.POSITIVE_INFINITY };
  for (const ridge of RIDGES) {
    const loss = halves.reduce((sum, fitOn, i) => {
      // Half the records pull half as hard, so the ridge is halved with them.
      const weights = fitWeights(problem(fitOn, ridge / 2));
      return sum + weightLoss({ ...problem(halves[1 - i] as HeldOut[], 0) }, weights);
    }, 0);
    if (loss < best.loss) best = { ridge, loss };
  }
  return fitWeights(problem(heldOut, best.ridge));
}
