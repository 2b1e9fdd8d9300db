import type { HeldOut } from './leave-one-out';
import { solvePositiveDefinite } from './solve-positive-definite';

/** Which exponent each finding uses, and what pulls the exponents: `ridge / 2 * (w - towards)^2` each. */
export type WeightProblem = {
  heldOut: readonly HeldOut[];
  groupOf: ArrayLike<number>;
  towards: Float64Array;
  ridge: number;
  /** Curvature of the log loss at `towards`, where it is known already. */
  curvature?: Float64Array;
  /** Where to begin: exponents that are near by, such as those under another ridge. Default: `towards`. */
  start?: Float64Array;
};

const MAX_ROUNDS = 10;
/** The curvature changes slowly, so it is computed anew in every this many rounds only. */
const CURVATURE_ROUNDS = 5;
/** Causes below this probability are left out of the curvature (not of the gradient). */
const NEGLIGIBLE = 1e-3;

/**
 * Exponents w >= 0 that maximise the leave-one-out log likelihood less the ridge: a convex problem, solved by projected
 * Newton steps with backtracking (D. P. Bertsekas, SIAM J. Control and Optimization 20 (1982), 221-246).
 */
export function fitWeights(problem: WeightProblem): Float64Array {
  let weights = Float64Array.from(problem.start ?? problem.towards);
  let loss = weightLoss(problem, weights);
  let curvature = problem.curvature;
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    if (curvature === undefined || (round > 0 && round % CURVATURE_ROUNDS === 0)) curvature = lossCurvature(problem, weights);
    const step = newtonStep(weights, { gradient: lossGradient(problem, weights), curvature, ridge: problem.ridge });
    let scale = 1;
    let next = weights;
    let nextLoss = Number.POSITIVE_INFINITY;
    while (scale > 1e-4) {
      const factor = scale;
      next = weights.map((w, i) => Math.max(0, w - factor * (step[i] as number)));
      nextLoss = weightLoss(problem, next);
      if (nextLoss < loss) break;
      scale /= 2;
    }
    if (!(nextLoss < loss)) break;
    const gained = loss - nextLoss;
    weights = next;
    loss = nextLoss;
    if (gained < 3e-5 * Math.abs(loss)) break;
  }
  return weights;
}

/** Log loss summed over records (cuts averaged within each), plus the ridge, in nats. */
export function weightLoss(problem: WeightProblem, weights: Float64Array): number {
  let loss = 0;
  for (const record of problem.heldOut) {
    forEachCut(problem, record, weights, ({ logShare }) => {
      for (const { cause, share } of record.target) loss -= (share * logShare(cause)) / record.cuts.length;
    });
  }
  weights.forEach((w, i) => {
    loss += (problem.ridge / 2) * (w - (problem.towards[i] as number)) ** 2;
  });
  return loss;
}

export type Cut = { length: number; probability: Float64Array; logShare: (cause: number) => number };

const LEAST_LOG = -30;

/** Visits each moment at which a record is scored, with the probabilities of all causes there. */
export function forEachCut(problem: WeightProblem, record: HeldOut, weights: Float64Array, visit: (cut: Cut) => void): void {
  const width = record.logPrior.length;
  const scores = Float64Array.from(record.logPrior);
  let done = 0;
  for (const length of record.cuts) {
    for (; done < length; done += 1) {
      const w = weights[problem.groupOf[record.observables[done] as number] as number] as number;
      for (let c = 0, at = done * width; c < width; c += 1, at += 1) {
        scores[c] = (scores[c] as number) + w * (record.columns[at] as number);
      }
    }
    let top = Number.NEGATIVE_INFINITY;
    for (let c = 0; c < width; c += 1) if ((scores[c] as number) > top) top = scores[c] as number;
    const probability = new Float64Array(width);
    let total = 0;
    for (let c = 0; c < width; c += 1) {
      const e = Math.exp((scores[c] as number) - top);
      probability[c] = e;
      total += e;
    }
    for (let c = 0; c < width; c += 1) probability[c] = (probability[c] as number) / total;
    const logTotal = top + Math.log(total);
    visit({ length, probability, logShare: (cause) => Math.max(LEAST_LOG, (scores[cause] as number) - logTotal) });
  }
}

/** Gradient of `weightLoss`: expected less observed columns, plus the ridge. */
function lossGradient(problem: WeightProblem, weights: Float64Array): Float64Array {
  const gradient = weights.map((w, i) => problem.ridge * (w - (problem.towards[i] as number)));
  for (const record of problem.heldOut) {
    const width = record.logPrior.length;
    // A cut's gradient is the same product for each of its findings, so the cuts that hold a finding are added up first.
    const excess = new Float64Array(record.observables.length * width);
    forEachCut(problem, record, weights, ({ length, probability }) => {
      for (const { cause, share } of record.target) probability[cause] = (probability[cause] as number) - share;
      for (let i = 0; i < length; i += 1) {
        for (let c = 0, at = i * width; c < width; c += 1, at += 1) excess[at] = (excess[at] as number) + (probability[c] as number);
      }
    });
    record.observables.forEach((observable, i) => {
      let sum = 0;
      for (let c = 0, at = i * width; c < width; c += 1, at += 1) sum += (excess[at] as number) * (record.columns[at] as number);
      const group = problem.groupOf[observable] as number;
      gradient[group] = (gradient[group] as number) + sum / record.cuts.length;
    });
  }
  return gradient;
}

/** Second derivatives of the log loss (without the ridge), row by row. */
export function lossCurvature(problem: WeightProblem, weights: Float64Array): Float64Array {
  const size = weights.length;
  const curvature = new Float64Array(size * size);
  for (const record of problem.heldOut) {
    forEachCut(problem, record, weights, ({ length, probability }) => {
      addCurvature(problem, { record, length, probability, curvature });
    });
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) curvature[j * size + i] = curvature[i * size + j] as number;
  }
  return curvature;
}

/** Adds one cut's part: the covariance of the columns under its probabilities. */
function addCurvature(
  problem: WeightProblem,
  { record, length, probability, curvature }: { record: HeldOut; length: number; probability: Float64Array; curvature: Float64Array },
): void {
  const width = record.logPrior.length;
  const size = problem.towards.length;
  const causes: number[] = [];
  probability.forEach((p, c) => {
    if (p > NEGLIGIBLE) causes.push(c);
  });
  const M = causes.length;
  if (M < 2) return;
  const centred = new Float64Array(length * M);
  const groups = new Int32Array(length);
  for (let i = 0; i < length; i += 1) {
    const at = i * width;
    let mean = 0;
    for (const c of causes) mean += (probability[c] as number) * (record.columns[at + c] as number);
    groups[i] = problem.groupOf[record.observables[i] as number] as number;
    causes.forEach((c, k) => {
      centred[i * M + k] = Math.sqrt((probability[c] as number) / record.cuts.length) * ((record.columns[at + c] as number) - mean);
    });
  }
  for (let i = 0; i < length; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = 0;
      for (let k = 0, a = i * M, b = j * M; k < M; k += 1) sum += (centred[a + k] as number) * (centred[b + k] as number);
      const gi = groups[i] as number;
      const gj = groups[j] as number;
      const at = Math.max(gi, gj) * size + Math.min(gi, gj);
      curvature[at] = (curvature[at] as number) + (gi === gj && i !== j ? 2 * sum : sum);
    }
  }
}

/** Newton's step over the exponents that are free; those held at 0 by the gradient stay. */
function newtonStep(
  weights: Float64Array,
  { gradient, curvature, ridge }: { gradient: Float64Array; curvature: Float64Array; ridge: number },
): Float64Array {
  const size = weights.length;
  const free: number[] = [];
  for (let i = 0; i < size; i += 1) if ((weights[i] as number) > 1e-9 || (gradient[i] as number) < 0) free.push(i);
  const matrix = new Float64Array(free.length * free.length);
  free.forEach((i, a) => {
    free.forEach((j, b) => {
      matrix[a * free.length + b] = (curvature[i * size + j] as number) + (i === j ? ridge + 1e-9 : 0);
    });
  });
  const solved = solvePositiveDefinite(matrix, Float64Array.from(free, (i) => gradient[i] as number));
  const step = new Float64Array(size);
  free.forEach((i, a) => {
    step[i] = solved[a] as number;
  });
  return step;
}
