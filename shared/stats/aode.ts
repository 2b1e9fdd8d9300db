import { flatFindings, logCauseShares, multiplyPairShares, type Shrinkage, singleShares } from './dependence-shares';
import type { CodedFinding } from './layout';
import type { PairCounts } from './pair-counts';

/** Factors multiplied before the logarithm is taken, so that the product cannot underflow. */
const CHUNK = 16;

/**
 * Averaged one-dependence scores: log of the mean, over the findings u, of P(c) P(u | c) times the product of
 * P(v | c, u) over the other findings (G. I. Webb, J. R. Boughton & Z. Wang, Machine Learning 58 (2005), 5-24), with
 * shrunken shares in place of the m-estimate. Reads the counts as they are. Without findings: the log prior.
 * @returns natural logs up to a constant, length causeCount
 */
export function aodeScores(counts: PairCounts, findings: readonly CodedFinding[], shrinkage: Shrinkage): Float64Array {
  const flat = flatFindings(counts, findings);
  const prior = logCauseShares(counts);
  if (flat.length === 0) return prior;
  const C = counts.layout.causeCount;
  const shares = flat.map((finding) => singleShares(counts, finding, shrinkage));
  const top = new Float64Array(C).fill(Number.NEGATIVE_INFINITY);
  const sum = new Float64Array(C);
  flat.forEach((parent, i) => {
    const log = prior.slice();
    let product = Float64Array.from(shares[i] as Float64Array);
    flat.forEach((child, j) => {
      if (i !== j) multiplyPairShares(counts, { parent, child, childShares: shares[j] as Float64Array, shrinkage }, product);
      if ((j + 1) % CHUNK !== 0 && j !== flat.length - 1) return;
      for (let c = 0; c < C; c += 1) log[c] = (log[c] as number) + Math.log(product[c] as number);
      product = new Float64Array(C).fill(1);
    });
    for (let c = 0; c < C; c += 1) addLog(c, log[c] as number, top, sum);
  });
  return top.map((t, c) => t + Math.log((sum[c] as number) / flat.length));
}

/** Adds exp(log) to a sum that is kept as exp(top) times `sum`. */
function addLog(c: number, log: number, top: Float64Array, sum: Float64Array): void {
  const before = top[c] as number;
  if (log <= before) {
    sum[c] = (sum[c] as number) + Math.exp(log - before);
  } else {
    sum[c] = (sum[c] as number) * Math.exp(before - log) + 1;
    top[c] = log;
  }
}
