import { weightedQuantile } from './weighted-quantile';

/** Where the ends of a sample are looked for first, in standard deviations from its mean; then nearer to it. */
const CUTS = [1.2, 0.6, 0] as const;

/** Room for the values beyond a cut, from the end that is asked for. */
type Scratch = { values: Float64Array; weights: Float64Array };
let kept: Scratch = { values: new Float64Array(0), weights: new Float64Array(0) };

/** Mean and spread are only to say where to look: a quarter of the sample tells them well enough. */
const SAMPLED = 4;

/**
 * Both ends of the middle of a weighted sample: `weightedQuantile` at `tail` and at `total - tail`, for tails that are small. Only
 * the values beyond a cut are put in order, which suffices where they weigh as much as the tail. Changes neither array.
 * @param values in no order of their own
 * @param total sum of the weights; `tail` in the same unit, below half of it
 */
export function weightedTails(values: Float64Array, weights: Float64Array, { tail, total }: Tails): { low: number; high: number } {
  const where = middleOf(values);
  return {
    low: oneEnd(values, weights, { sign: 1, ...where, tail }) ?? weightedQuantile(Float64Array.from(values), Float64Array.from(weights), tail),
    high: highEnd(values, weights, { ...where, tail, total }),
  };
}

/** The upper of the two ends alone. */
export function upperTail(values: Float64Array, weights: Float64Array, { tail, total }: Tails): number {
  return highEnd(values, weights, { ...middleOf(values), tail, total });
}

/**
 * Whether the lower of the two ends is surely less than `limit`: the values below it weigh the tail and a little more, since sums of
 * weights in another order differ in their last digits. Where it is false, the end may still be less by a hair.
 */
export function endsBelow(values: Float64Array, weights: Float64Array, { tail, limit }: { tail: number; limit: number }): boolean {
  const enough = tail * (1 + 1e-9);
  let below = 0;
  for (let i = 0; i < values.length; i += 1) {
    // So put, a limit that is no number is met by none.
    if (!((values[i] as number) < limit)) continue;
    below += weights[i] as number;
    if (below > enough) return true;
  }
  return false;
}

type Tails = { tail: number; total: number };
type Middle = { mean: number; spread: number };

/** About where the sample lies; makes room for it, too. */
function middleOf(values: Float64Array): Middle {
  const size = values.length;
  if (kept.values.length < size) kept = { values: new Float64Array(size), weights: new Float64Array(size) };
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let i = 0; i < size; i += SAMPLED) {
    const value = values[i] as number;
    sum += value;
    squares += value * value;
    count += 1;
  }
  const mean = sum / count;
  // Where it is small beside the mean, rounding may take it to 0: the cuts are then too near, and still right.
  return { mean, spread: Math.sqrt(Math.max(0, squares / count - mean * mean)) };
}

function highEnd(values: Float64Array, weights: Float64Array, { mean, spread, tail, total }: Tails & Middle): number {
  const mirrored = oneEnd(values, weights, { sign: -1, mean: -mean, spread, tail });
  return mirrored === null ? weightedQuantile(Float64Array.from(values), Float64Array.from(weights), total - tail) : -mirrored;
}

type Where = Middle & { sign: 1 | -1; tail: number };

function oneEnd(values: Float64Array, weights: Float64Array, { sign, mean, spread, tail }: Where): number | null {
  for (const cut of CUTS) {
    const found = endBeyond(values, weights, { sign, cut: mean - cut * spread, tail });
    if (found !== null) return found;
  }
  return null;
}

/**
 * With `sign` 1 the least value at which the weights of it and all smaller ones reach the tail, looked for below the cut; with -1
 * the same of the values' negatives, strictly past the tail. Null where the values below the cut weigh too little.
 */
function endBeyond(values: Float64Array, weights: Float64Array, { sign, cut, tail }: { sign: 1 | -1; cut: number; tail: number }): number | null {
  const { values: found, weights: own } = kept;
  let count = 0;
  let weighed = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = sign * (values[i] as number);
    if (value >= cut) continue;
    const weight = weights[i] as number;
    weighed += weight;
    let at = count;
    while (at > 0 && (found[at - 1] as number) > value) {
      found[at] = found[at - 1] as number;
      own[at] = own[at - 1] as number;
      at -= 1;
    }
    found[at] = value;
    own[at] = weight;
    count += 1;
  }
  if (weighed <= tail) return null;
  let below = 0;
  for (let i = 0; i < count; i += 1) {
    below += own[i] as number;
    if (sign > 0 ? below >= tail : below > tail) return found[i] as number;
  }
  return null;
}
