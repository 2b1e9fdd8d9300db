/** Natural logarithm of P(v | cause) for every cause, unlisted last, and the exponent it gets. */
export type WeightedEvidence = { readonly logLikelihood: Float64Array; readonly weight: number };

/**
 * The scoring kernel: log prior plus the weighted sum of log likelihoods, per cause; not normalised.
 * @returns natural logs, -Infinity where a cause is impossible; same length as `logPrior`
 */
export function scoreFindings(input: { logPrior: Float64Array; findings: readonly WeightedEvidence[] }): Float64Array {
  const scores = input.logPrior.slice();
  for (const { logLikelihood, weight } of input.findings) {
    if (weight === 0) continue;
    for (let c = 0; c < scores.length; c += 1) scores[c] = (scores[c] as number) + weight * (logLikelihood[c] as number);
  }
  return scores;
}

/**
 * Logarithm of the sum of exponentials, safe against overflow; -Infinity for an empty or impossible list.
 * @param without place of a value that is left out
 */
export function logSumExp(values: ArrayLike<number>, without = -1): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i += 1) if (i !== without && (values[i] as number) > top) top = values[i] as number;
  if (top === Number.NEGATIVE_INFINITY) return top;
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) if (i !== without) sum += Math.exp((values[i] as number) - top);
  return top + Math.log(sum);
}

/** Probabilities that sum to 1 from unnormalised logs. Throws RangeError where nothing is possible. */
export function normaliseLogScores(scores: Float64Array): Float64Array {
  const total = logSumExp(scores);
  if (!Number.isFinite(total)) throw new RangeError('No cause is possible under these scores.');
  // Plain loops: a typed array's own `map` takes several times as long.
  const probability = new Float64Array(scores.length);
  for (let c = 0; c < scores.length; c += 1) probability[c] = Math.exp((scores[c] as number) - total);
  return probability;
}

/** `mixing` of the prior, the rest of the probability. */
export function mixIn(probability: Float64Array, prior: Float64Array, mixing: number): Float64Array {
  const mixed = new Float64Array(probability.length);
  for (let c = 0; c < mixed.length; c += 1) mixed[c] = (1 - mixing) * (probability[c] as number) + mixing * (prior[c] as number);
  return mixed;
}
