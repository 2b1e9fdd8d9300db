import type { Posterior } from './estimator';

/** Chances stated for one cause of one record, between `low` and `high`; shares 0 to 1. */
export type BracketBin = {
  low: number;
  high: number;
  /** Pairs of a record and a cause. */
  count: number;
  /** Mean chance stated, and mean ends of its bracket. */
  stated: number;
  bracketLow: number;
  bracketHigh: number;
  /** Share of the pairs in which that cause it was. */
  observed: number;
};

/** `held`: share of the pairs in bins whose observed share lies within the mean bracket; `width`: mean width of a bracket. */
export type Brackets = { pairs: number; held: number; width: number; bins: BracketBin[] };

const BINS = 10;
/** Causes given less are left out: they are nearly all of them, and nearly all rightly near nought. */
const LEAST_STATED = 0.01;

/**
 * Compares every stated chance of at least 1 %, and its bracket, with how often that cause it was. What a single unit's true
 * chance is nobody knows outside an invented world, so brackets are checked bin by bin: the share observed in a bin should
 * lie within the mean bracket of that bin.
 */
export function createBracketBoard(): {
  add(posterior: Posterior, target: readonly { cause: number; share: number }[]): void;
  brackets(): Brackets | null;
} {
  const bins = Array.from({ length: BINS }, () => ({ count: 0, stated: 0, bracketLow: 0, bracketHigh: 0, observed: 0 }));
  return {
    add({ probability, low, high }, target) {
      probability.forEach((p, cause) => {
        if (p < LEAST_STATED) return;
        const bin = bins[Math.min(BINS - 1, Math.floor(p * BINS))] as (typeof bins)[0];
        bin.count += 1;
        bin.stated += p;
        bin.bracketLow += low[cause] as number;
        bin.bracketHigh += high[cause] as number;
        bin.observed += target.reduce((sum, t) => sum + (t.cause === cause ? t.share : 0), 0);
      });
    },
    brackets() {
      const pairs = bins.reduce((sum, bin) => sum + bin.count, 0);
      if (pairs === 0) return null;
      const width = bins.reduce((sum, bin) => sum + bin.bracketHigh - bin.bracketLow, 0) / pairs;
      const means = bins.map((bin, i) => meanBin(bin, i));
      const isHeld = (bin: BracketBin) => bin.observed >= bin.bracketLow && bin.observed <= bin.bracketHigh;
      const held = means.reduce((sum, bin) => sum + (isHeld(bin) ? bin.count : 0), 0) / pairs;
      return { pairs, held, width, bins: means };
    },
  };
}

function meanBin(sums: Omit<BracketBin, 'low' | 'high'>, place: number): BracketBin {
  const n = Math.max(1, sums.count);
  return {
    low: place / BINS,
    high: (place + 1) / BINS,
    count: sums.count,
    stated: sums.stated / n,
    bracketLow: sums.bracketLow / n,
    bracketHigh: sums.bracketHigh / n,
    observed: sums.observed / n,
  };
}
