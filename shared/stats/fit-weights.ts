import type { HeldOut } from './leave-one-out';
import { solvePositiveDefinite } from './solve-positive-definite';

/** Which exponent each finding uses, and what pulls the exponents: `ridge / 2 * (w - towards)^2` each. */
export type WeightProblem = {
  heldOut: readonly HeldOut[];
  groupOf: ArrayLike<number>;
  towards: Float64Array;
  ridge: number;
};

const MAX_ROUNDS = 12;
/** Causes below this probability are left out of the curvature (not of the gradient). */
const NEGLIGIBLE = 1e-4;

/**
 * Exponents w >= 0 that maximise the leave-one-out log likelihood less the ridge: a convex problem, solved by projected
 * Newton steps with backtracking (D. P. Bertsekas, SIAM J. Control and Optimization 20 (1982), 221-246).
 */
export function fitWeights(problem: WeightProblem): Float64Array {
  let weights = Float64Array.from(problem.towards);
  let loss = weightLoss(problem, weights);
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const { gradient, curvature } = derivatives(problem, weights);
    const step = newtonStep(weights, gradient, curvature);
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
    if (gained < 1e-5 * Math.abs(loss)) break;
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

type Cut = { length: number; probability: Float64Array; logShare: (cause: number) => number };

const LEAST_LOG = -30;

function forEachCut(problem: WeightProblem, record: HeldOut, weights: Float64Array, visit: (cut: Cut) => void): void {
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

function derivatives(problem: WeightProblem, weights: Float64Array): { gradient: Float64Array; curvature: Float64Array } {
  const size = weights.length;
  const gradient = weights.map((w, i) => problem.ridge * (w - (problem.towards[i] as number)));
  const curvature = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) curvature[i * size + i] = problem.ridge + 1e-9;
  for (const record of problem.heldOut) {
    const scale = 1 / record.cuts.length;
    forEachCut(problem, record, weights, ({ length, probability }) => {
      addCut(problem, { record, length, probability, scale, gradient, curvature });
    });
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) curvature[j * size + i] = curvature[i * size + j] as number;
  }
  return { gradient, curvature };
}

type Addition = {
  record: HeldOut;
  length: number;
  probability: Float64Array;
  scale: number;
  gradient: Float64Array;
  curvature: Float64Array;
};

/** Adds one cut's gradient (expected less observed column) and curvature (covariance of the columns under p). */
function addCut(problem: WeightProblem, { record, length, probability, scale, gradient, curvature }: Addition): void {
  const width = record.logPrior.length;
  const size = gradient.length;
  const causes: number[] = [];
  probability.forEach((p, c) => {
    if (p > NEGLIGIBLE) causes.push(c);
  });
  const centred = new Float64Array(length * causes.length);
  const groups = new Int32Array(length);
  for (let i = 0; i < length; i += 1) {
    const at = i * width;
    let mean = 0;
    for (let c = 0; c < width; c += 1) mean += (probability[c] as number) * (record.columns[at + c] as number);
    let seen = 0;
    for (const { cause, share } of record.target) seen += share * (record.columns[at + cause] as number);
    const group = problem.groupOf[record.observables[i] as number] as number;
    groups[i] = group;
    gradient[group] = (gradient[group] as number) + scale * (mean - seen);
    causes.forEach((c, k) => {
      centred[i * causes.length + k] = Math.sqrt(scale * (probability[c] as number)) * ((record.columns[at + c] as number) - mean);
    });
  }
  for (let i = 0; i < length; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = 0;
      for (let k = 0, a = i * causes.length, b = j * causes.length; k < causes.length; k += 1) {
        sum += (centred[a + k] as number) * (centred[b + k] as number);
      }
      const gi = groups[i] as number;
      const gj = groups[j] as number;
      const at = Math.max(gi, gj) * size + Math.min(gi, gj);
      curvature[at] = (curvature[at] as number) + (gi === gj && i !== j ? 2 * sum : sum);
    }
  }
}

/** Newton's step over the exponents that are free; those held at 0 by the gradient stay. */
function newtonStep(weights: Float64Array, gradient: Float64Array, curvature: Float64Array): Float64Array {
  const size = weights.length;
  const free: number[] = [];
  for (let i = 0; i < size; i += 1) if ((weights[i] as number) > 1e-9 || (gradient[i] as number) < 0) free.push(i);
  const matrix = new Float64Array(free.length * free.length);
  free.forEach((i, a) => {
    free.forEach((j, b) => {
      matrix[a * free.length + b] = curvature[i * size + j] as number;
    });
  });
  const solved = solvePositiveDefinite(matrix, Float64Array.from(free, (i) => gradient[i] as number));
  const step = new Float64Array(size);
  free.forEach((i, a) => {
    step[i] = solved[a] as number;
  });
  return step;
}
