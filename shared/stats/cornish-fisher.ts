/** Cumulants of a distribution: mean, variance, third and fourth. */
export type Cumulants = { mean: number; variance: number; third: number; fourth: number };

/**
 * A quantile of a distribution that is not far from normal, from its cumulants: the expansion up to the second order (E. A. Cornish &
 * R. A. Fisher, Revue de l'Institut International de Statistique 5 (1938), 307-320).
 * @param z quantile of the standard normal distribution at the same probability
 */
export function cornishFisher({ mean, variance, third, fourth }: Cumulants, z: number): number {
  if (!(variance > 0)) return mean;
  const spread = Math.sqrt(variance);
  const skew = third / (variance * spread);
  const excess = fourth / (variance * variance);
  return mean + spread * (z + ((z * z - 1) * skew) / 6 + ((z * z * z - 3 * z) * excess) / 24 - ((2 * z * z * z - 5 * z) * skew * skew) / 36);
}
