import { flatFindings, logCauseShares, multiplyPairShares, type Shrinkage, singleShares } from './dependence-shares';
import type { CodedFinding } from './layout';
import type { PairCounts } from './pair-counts';

/**
 * Tree-augmented naive Bayes scores: log of P(c) times the product of P(v | c, value of v's parent in the tree), or of
 * P(v | c) where the parent was not observed, with shrunken shares (N. Friedman, D. Geiger & M. Goldszmidt, Machine
 * Learning 29 (1997), 131-163). Reads the counts as they are.
 * @param parents the tree, from `tanTree`
 * @returns natural logs, length causeCount
 */
export function tanScores(
  counts: PairCounts,
  findings: readonly CodedFinding[],
  { parents, shrinkage }: { parents: Int32Array; shrinkage: Shrinkage },
): Float64Array {
  const flat = flatFindings(counts, findings);
  const scores = logCauseShares(counts);
  for (const child of flat) {
    const childShares = singleShares(counts, child, shrinkage);
    const parent = flat.find(({ observable }) => observable === parents[child.observable]);
    let factors = childShares;
    if (parent !== undefined) {
      factors = new Float64Array(childShares.length).fill(1);
      multiplyPairShares(counts, { parent, child, childShares, shrinkage }, factors);
    }
    for (let c = 0; c < scores.length; c += 1) scores[c] = (scores[c] as number) + Math.log(factors[c] as number);
  }
  return scores;
}
