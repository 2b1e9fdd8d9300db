import { forEachCut } from './fit-weights';
import type { HeldOut } from './leave-one-out';

/** Where the bins of the estimate begin; below the first nothing is learned. */
export const ERROR_BINS = [0.01, 0.05, 0.2, 0.5, 0.9] as const;

/** Records of a perfectly calibrated kind that each bin is given besides its own, so that thin bins claim little. */
const PSEUDO_RECORDS = 10;

/** Held-out records with exponents that were not fitted on them, and the exponents that were. */
export type CrossedRecords = { heldOut: readonly HeldOut[]; weights: Float64Array; ownWeights: Float64Array; groupOf: ArrayLike<number> };

/**
 * Variance of the log odds, in nats squared, by which estimates of each size are off, one entry per bin of `ERROR_BINS`, never
 * learned from a known truth. Two parts. Lasting over- or underconfidence: the squared difference between the log odds of the
 * observed share and of the mean estimate, under exponents that the records were not fitted on. And what the exponents
 * themselves leave open: two fits on halves differ by four times the variance of a fit on the whole. Errors that
 * neither shows, because they average out within a bin, are not in it.
 */
export function fitModelError(crossed: readonly CrossedRecords[]): number[] {
  const bins = ERROR_BINS.map(() => ({ count: 0, estimated: 0, observed: 0, apart: 0 }));
  for (const { heldOut, weights, ownWeights, groupOf } of crossed) {
    const problem = { heldOut, groupOf, towards: weights, ridge: 0 };
    for (const record of heldOut) {
      const share = new Map(record.target.map((t) => [t.cause, t.share]));
      const own: Float64Array[] = [];
      forEachCut(problem, record, ownWeights, ({ probability }) => own.push(Float64Array.from(probability)));
      let cut = 0;
      forEachCut(problem, record, weights, ({ probability }) => {
        const beside = own[cut++] as Float64Array;
        probability.forEach((p, cause) => {
          const bin = bins[errorBin(p)];
          if (!bin) return;
          bin.count += 1 / record.cuts.length;
          bin.estimated += p / record.cuts.length;
          bin.observed += (share.get(cause) ?? 0) / record.cuts.length;
          bin.apart += (logit(p) - logit(beside[cause] as number)) ** 2 / record.cuts.length;
        });
      });
    }
  }
  return bins.map(({ count, estimated, observed, apart }) => {
    if (count === 0) return 0;
    const mean = estimated / count;
    const lasting = logit((observed + PSEUDO_RECORDS * mean) / (count + PSEUDO_RECORDS)) - logit(mean);
    return lasting ** 2 + apart / count / 4;
  });
}

/** Bin of an estimate, -1 below the first. */
export function errorBin(probability: number): number {
  return ERROR_BINS.findLastIndex((least) => probability >= least);
}

/** Natural log odds; a share of 0 or 1 counts as one in a thousand from it. */
function logit(share: number): number {
  const inside = Math.min(0.999, Math.max(0.001, share));
  return Math.log(inside / (1 - inside));
}
