import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import type { Interval } from './jeffreys-interval';

/**
 * Interval of one share among several: the marginal of a Dirichlet posterior with 1/2 per category (Jeffreys' prior),
 * which is Beta(count + 1/2, total - count + (categories - 1)/2). With two categories it is Jeffreys' interval.
 * @param categories how many shares sum to 1, at least 2
 */
export function dirichletMarginalInterval(count: number, total: number, categories: number, confidence = 0.9): Interval {
  if (!(count >= 0 && count <= total)) throw new RangeError(`There cannot be ${count} of ${total}.`);
  if (!(categories >= 2)) throw new RangeError('Shares need at least two categories.');
  if (total === 0) return { low: 0, high: 1 };
  const a = count + 0.5;
  const b = total - count + (categories - 1) / 2;
  const tail = (1 - confidence) / 2;
  return { low: count === 0 ? 0 : betaQuantile(tail, a, b), high: count === total ? 1 : betaQuantile(1 - tail, a, b) };
}
