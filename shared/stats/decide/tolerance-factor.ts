import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/** Steps of the integration over where the sample mean may lie; even, for Simpson's rule. */
const STEPS = 32;
/** How many standard errors of the mean the integration goes out. */
const REACH = 8;

/**
 * The factor k for which mean -+ k standard deviations of `size` normal readings holds a share `coverage` of the
 * population with the given confidence (two-sided, exact).
 *
 * `size` at least 2; `coverage` and `confidence` between 0 and 1. For a sample mean off by z the interval must reach r(z), the
 * solution of Phi(z + r) - Phi(z - r) = coverage; the chance that k s does so is a chi-square tail, averaged over z by
 * Simpson's rule, and k is found by bisection (R. E. Odeh & D. B. Owen, "Tables for Normal Tolerance Limits, Sampling Plans,
 * and Screening", 1980; ISO 16269-6). Throws a RangeError outside these domains.
 */
export function toleranceFactor(size: number, coverage: number, confidence: number): number {
  if (!Number.isInteger(size) || size < 2) throw new RangeError(`A tolerance factor needs at least 2 readings, not ${size}.`);
  for (const share of [coverage, confidence]) {
    if (!(share > 0 && share < 1)) throw new RangeError(`Coverage and confidence must lie between 0 and 1, not ${share}.`);
  }
  const freedom = size - 1;
  // The chance is even in z: twice the half from 0 up. Density times weight times squared reach, once for all k.
  const step = REACH / Math.sqrt(size) / STEPS;
  const points = Array.from({ length: STEPS + 1 }, (_, index) => {
    const z = index * step;
    const simpson = index === 0 || index === STEPS ? 1 : index % 2 === 1 ? 4 : 2;
    const density = Math.sqrt(size / (2 * Math.PI)) * Math.exp((-size * z * z) / 2);
    return { weight: (2 * simpson * step * density) / 3, squared: reachFor(z, coverage) ** 2 };
  });
  const confidenceOf = (factor: number) =>
    points.reduce(
      (sum, { weight, squared }) => sum + weight * (1 - chiSquareCdf((freedom * squared) / (factor * factor), freedom)),
      0,
    );
  let high = 2;
  while (confidenceOf(high) < confidence) high *= 2;
  return bisect((factor) => confidenceOf(factor) - confidence, 0, high);
}

/** Half-width r about a point z off centre that holds the share `coverage` of a standard normal population. */
function reachFor(z: number, coverage: number): number {
  return bisect((r) => normalCdf(z + r, 0, 1) - normalCdf(z - r, 0, 1) - coverage, 0, z + 40);
}

/** Where a rising function crosses 0 between two ends. */
function bisect(rising: (x: number) => number, low: number, high: number): number {
  let [left, right] = [low, high];
  for (let round = 0; round < 44; round++) {
    const middle = (left + right) / 2;
    if (rising(middle) < 0) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}
