import { addRecord, type Counts, createCounts } from './counts';
import { commonProblem, fitDamping } from './fit-damping';
import { fitConcentrations } from './fit-concentrations';
import { fitModelError } from './fit-model-error';
import { fitPrior } from './fit-prior';
import { fitWeights, lossCurvature, weightLoss } from './fit-weights';
import { type CodedRecord, FIX, type Layout } from './layout';
import { type HeldOut, leaveOneOut } from './leave-one-out';
import { poolByKind } from './pool-by-kind';
import { createRandom, shuffle } from './random';
import { defaultSettings, type Settings } from './settings';
import { createEstimator } from './weighted-naive-bayes';

export type FitOptions = {
  /** Seed of the sample of records that the fit looks at. */
  seed?: number;
  /** Most records scored by leave-one-out (fewer where causes and findings are many); the counts hold all of them. */
  maxRecords?: number;
  /** Whether causes on no record are possible; off for plain tables. */
  unlisted?: boolean;
};

/** Records one by one: an array, or something that makes them when asked for, so that a million need not be held. */
export type RecordList = { readonly length: number; at(index: number): CodedRecord | undefined };

/** Ridge strengths tried: records that a deviation of 1 from the common exponent costs, roughly. Each begins where the one before ended. */
const RIDGES = [32, 8, 2, 0.5];
const SHRINKAGE_FACTORS = [0.4, 1, 2.5];
/** Most cells (record, finding, cause) of one leave-one-out pass. */
const SCORED_CELLS = 4_500_000;

/**
 * Fits all settings to records: concentrations of prior and shares, then one common exponent per kind, then one per
 * observable, all on exact leave-one-out scores at the moments of `CUTS`. Deterministic in its arguments.
 */
export function fitSettings(layout: Layout, records: RecordList, options: FitOptions = {}): Settings {
  const start: Settings = { ...defaultSettings(layout), unlisted: options.unlisted ?? true };
  const counts = createCounts(layout);
  const resolved: number[] = [];
  let findings = 0;
  for (let i = 0; i < records.length; i += 1) {
    const record = records.at(i) as CodedRecord;
    addRecord(counts, record);
    if (record.causes.length === 0) continue;
    resolved.push(i);
    findings += record.findings.length;
  }
  if (resolved.length < 20) return start;
  const most = Math.min(options.maxRecords ?? 1500, affordable(layout, findings / resolved.length, SCORED_CELLS));
  const sample = shuffle(resolved, createRandom(options.seed ?? 1)).slice(0, most).map((i) => records.at(i) as CodedRecord);
  const shaped = fitConcentrations(counts, fitPrior(counts, start, sample), sample);
  return fitExponents(counts, shaped, sample);
}

/** The factor on the shrinkage is chosen by leave-one-out log loss under common exponents; then exponents are fitted. */
function fitExponents(counts: Counts, settings: Settings, sample: readonly CodedRecord[]): Settings {
  const { layout } = counts;
  let best: { scaled: Settings; heldOut: HeldOut[]; loss: number } | null = null;
  for (const factor of SHRINKAGE_FACTORS) {
    const scaled = scaleShrinkage(settings, factor);
    const heldOut = leaveOneOut(layout, { counts, estimator: createEstimator(layout, counts, scaled), records: sample });
    const problem = commonProblem(poolByKind(layout.kinds, heldOut));
    const loss = weightLoss(problem, fitWeights(problem));
    // Scores take as much room as they take time: only the best are kept.
    if (best === null || loss < best.loss) best = { scaled, heldOut, loss };
  }
  const { scaled, heldOut: plain } = best as NonNullable<typeof best>;
  // A plain table has no symptoms that are present or absent, so nothing is damped there.
  const { damping, heldOut } = scaled.unlisted ? fitDamping(layout, plain) : { damping: 0, heldOut: plain };
  const { weights, byEstimate } = fitObservableWeights(layout, heldOut);
  // Few records keep findings from before a second fix, so the fit is poor there; a failed fix counts in full at least.
  const atLeast = Array.from(weights, (w, o) => (layout.kinds[o] === FIX ? Math.max(1, w) : w));
  return { ...scaled, weights: atLeast, symptomDamping: damping, modelError: { ...scaled.modelError, byEstimate } };
}

/** Exponents are fitted to shares as they are, so they start at 1 (see `clearInFull`). */
function scaleShrinkage(settings: Settings, factor: number): Settings {
  return { ...settings, weights: settings.weights.map(() => 1), concentrationFactors: settings.concentrationFactors.map((f) => f * factor) };
}

/**
 * Exponents per observable, pulled to their kind's common one as strongly as predicts best across two halves; and how far
 * off each half was under the other's exponents, by size of the estimate (`fitModelError`).
 */
export function fitObservableWeights(layout: Layout, heldOut: readonly HeldOut[]): { weights: Float64Array; byEstimate: number[] } {
  const common = fitWeights(commonProblem(poolByKind(layout.kinds, heldOut)));
  const towards = Float64Array.from(layout.kinds, (kind) => common[kind] as number);
  const groupOf = Float64Array.from(layout.kinds, (_, o) => o);
  const problem = (of: readonly HeldOut[]) => ({ heldOut: of, groupOf, towards, ridge: 0 });
  const halves = [0, 1].map((half) => {
    const fitOn = problem(heldOut.filter((_, i) => i % 2 === half));
    return { fitOn: { ...fitOn, curvature: lossCurvature(fitOn, towards) }, scored: problem(heldOut.filter((_, i) => i % 2 !== half)) };
  });
  let best = { ridge: 0, loss: Number.POSITIVE_INFINITY, fitted: [] as Float64Array[] };
  let before: Float64Array[] = [];
  for (const ridge of RIDGES) {
    // Half the records pull half as hard, so the ridge is halved with them.
    const fitted = halves.map(({ fitOn }, half) => fitWeights({ ...fitOn, ridge: ridge / 2, start: before[half] }));
    before = fitted;
    const loss = halves.reduce((sum, { scored }, half) => sum + weightLoss(scored, fitted[half] as Float64Array), 0);
    // The weaker the ridge, the longer a fit takes: no weaker one is tried once one has done worse.
    if (loss >= best.loss) break;
    best = { ridge, loss, fitted };
  }
  const crossed = best.fitted.map((weights, half) => ({
    heldOut: halves[half]?.scored.heldOut ?? [],
    weights,
    ownWeights: best.fitted[1 - half] as Float64Array,
    groupOf,
  }));
  const [one, other] = best.fitted as [Float64Array, Float64Array];
  const start = one.map((w, i) => (w + (other[i] as number)) / 2);
  return { weights: fitWeights({ ...problem(heldOut), ridge: best.ridge, start }), byEstimate: fitModelError(crossed) };
}

/** How many records a leave-one-out pass may look at, so that its cost stays within bounds. */
function affordable(layout: Layout, perRecord: number, cells: number): number {
  return Math.max(100, Math.floor(cells / ((layout.causeCount + 1) * Math.max(1, perRecord))));
}
