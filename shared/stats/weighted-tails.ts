import { weightedQuantile } from './weighted-quantile';

/** Where the ends of a sample are looked for first, in standard deviations from its mean; then nearer to it. */
const CUTS = [1.2, 0.6, 0] as const;

/** Room for the values beyond a cut, smallest first from the end that is asked for. */
type Scratch = { values: Float64Array; weights: Float64Array };
let kept: Scratch = { values: new Float64Array(0), weights: new Float64Array(0) };

/**
 * Both ends of the middle of a weighted sample: `weightedQuantile` at `tail` and at `total - tail`, for tails that are small. Only
 * the values beyond a cut are put in order, which suffices where they weigh as much as the tail. Changes neither array.
 * @param total sum of the weights; `tail` in the same unit, below half of it
 */
export function weightedTails(values: Float64Array, weights: Float64Array, { tail, total }: { tail: number; total: number }): { low: number; high: number } {
  const size = values.length;
  if (kept.values.length < size) kept = { values: new Float64Array(size), weights: new Float64Array(size) };
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < size; i += 1) {
    const value = values[i] as number;
    sum += value;
    squares += value * value;
  }
  const mean = sum / size;
  // Where it is small beside the mean, rounding may take it to 0: the cuts are then too near, and still right.
  const spread = Math.sqrt(Math.max(0, squares / size - mean * mean));
  const end = (sign: 1 | -1) => {
    for (const cut of CUTS) {
      const found = endBeyond(values, weights, { sign, cut: sign * mean - cut * spread, tail });
      if (found !== null) return sign * found;
    }
    return weightedQuantile(Float64Array.from(values), Float64Array.from(weights), sign > 0 ? tail : total - tail);
  };
  return { low: end(1), high: end(-1) };
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
