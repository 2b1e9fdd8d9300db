import type { Posterior } from './estimator';

/** How often intervals held the true probability, over pairs of a record and a cause with an estimate of at least 1 %. */
export type Coverage = { pairs: number; covered: number; meanWidth: number; excessLogLoss: number };

const LEAST_ESTIMATE = 0.01;

/** Compares posteriors with true ones. `excessLogLoss` is the mean Kullback-Leibler divergence from the truth, in nats. */
export function createCoverageBoard(): { add(posterior: Posterior, truth: Float64Array): void; coverage(): Coverage | null } {
  let pairs = 0;
  let covered = 0;
  let width = 0;
  let records = 0;
  let divergence = 0;
  return {
    add({ probability, low, high }, truth) {
      records += 1;
      truth.forEach((t, c) => {
        const p = probability[c] as number;
        if (t > 0) divergence += t * Math.log(t / Math.max(p, 1e-12));
        if (p < LEAST_ESTIMATE) return;
        pairs += 1;
        width += (high[c] as number) - (low[c] as number);
        if (t >= (low[c] as number) && t <= (high[c] as number)) covered += 1;
      });
    },
    coverage() {
      if (records === 0 || pairs === 0) return null;
      return { pairs, covered: covered / pairs, meanWidth: width / pairs, excessLogLoss: divergence / records };
    },
  };
}
