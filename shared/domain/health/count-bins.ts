/** One bin of a histogram: from `from` on, up to the next. */
export type CountBin = { from: number; to: number | null; count: number };

/** Where bins of whole days begin. */
export const DAY_BINS = [0, 1, 3, 7, 14, 30] as const;

/** Counts values into half-open bins that begin at `starts`, in ascending order; smaller values count in the first. */
export function countBins(values: readonly number[], starts: readonly number[]): CountBin[] {
  const bins = starts.map((from, at): CountBin => ({ from, to: starts[at + 1] ?? null, count: 0 }));
  for (const value of values) {
    const bin = bins.findLast(({ from }) => value >= from) ?? bins[0];
    if (bin !== undefined) bin.count += 1;
  }
  return bins;
}

/** The middle value; null of none. Of an even number, the lower of the two in the middle. */
export function lowerMedian(values: readonly number[]): number | null {
  return [...values].sort((a, b) => a - b)[Math.ceil(values.length / 2) - 1] ?? null;
}
