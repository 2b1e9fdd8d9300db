/**
 * Discounted cumulated gain at rank `depth`: the sum of gain / log2(rank + 1), ranks from 1, linear gain. Jarvelin &
 * Kekalainen 2002 in its usual modern form (they divide by log2(rank) from rank 2 on).
 *
 * @param gains relevance grade of each result in its order, 0 or more
 */
export function discountedGain(gains: readonly number[], depth: number): number {
  return gains.slice(0, depth).reduce((sum, gain, index) => sum + gain / Math.log2(index + 2), 0);
}

/**
 * DCG at `depth` over that of the best possible order, 0 to 1. Where nothing at all is relevant it is undefined: null.
 *
 * @param gains of the results in their order
 * @param available gains of everything that could have been found, in any order; what was found is among it
 */
export function normalisedDiscountedGain(gains: readonly number[], available: readonly number[], depth: number): number | null {
  const ideal = discountedGain([...available].sort((a, b) => b - a), depth);
  return ideal === 0 ? null : discountedGain(gains, depth) / ideal;
}

/**
 * Average precision: the mean, over the relevant documents, of the precision at the rank where each was found; those not
 * found count 0. Null where nothing is relevant. The mean of it over queries is MAP.
 *
 * @param relevantRanks ranks from 1 at which relevant documents stand
 * @param relevant how many relevant documents there are in all
 */
export function averagePrecision(relevantRanks: readonly number[], relevant: number): number | null {
  if (relevant === 0) return null;
  const ranks = [...relevantRanks].sort((a, b) => a - b);
  return ranks.reduce((sum, rank, index) => sum + (index + 1) / rank, 0) / relevant;
}

/** 1 / rank of the first relevant result, 0 where there is none. Its mean over queries is MRR. */
export function reciprocalRank(isRelevant: readonly boolean[]): number {
  const index = isRelevant.indexOf(true);
  return index < 0 ? 0 : 1 / (index + 1);
}
