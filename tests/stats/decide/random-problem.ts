import type { PlanCheck, PlanFix, PlanProblem } from '../../../shared/stats/decide/plan-problem';
import type { createRandom } from '../../../shared/stats/random';

type Random = ReturnType<typeof createRandom>;

export type ProblemSize = { causes: number; fixes: number; checks: number; weighted?: boolean };

const between = (random: Random, low: number, high: number) => low + (high - low) * random();
const pick = (random: Random, count: number) => Math.floor(random() * count);
/** Spread evenly over its logarithm, as minutes and prices are. */
const spread = (random: Random, low: number, high: number) => low * (high / low) ** random();

/** Shares that sum to 1; a higher `evenness` makes them more alike. */
function shares(random: Random, count: number, evenness: number): Float64Array {
  const raw = Float64Array.from({ length: count }, () => (0.001 - Math.log(1 - random())) ** (1 / evenness));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((share) => share / sum);
}

/** A fix that addresses one cause or several, mostly surely, sometimes not; never the unlisted one. */
function randomFix(random: Random, causes: number, fix: number): PlanFix {
  const cure = new Float64Array(causes + 1);
  const isBroad = random() < 0.35;
  const own = fix < causes ? fix : pick(random, causes);
  for (let cause = 0; cause < causes; cause++) {
    if (cause !== own && !(isBroad && random() < 0.5)) continue;
    cure[cause] = random() < 0.4 ? 1 : between(random, 0.4, 0.98);
  }
  return { cure, minutes: spread(random, 5, 120), partCost: random() < 0.4 ? 0 : spread(random, 1, 60), stage: pick(random, 5) };
}

/** A check with 2 to 4 outcomes: some causes share an outcome, misreadings included; the unlisted cause reads vaguely. */
function randomCheck(random: Random, causes: number, weighted: boolean): PlanCheck {
  const values = 2 + pick(random, 3);
  const noise = random() < 0.25 ? 0 : between(random, 0.02, 0.5);
  const table = new Float64Array((causes + 1) * values);
  for (let cause = 0; cause <= causes; cause++) {
    const typical = pick(random, values);
    const row = shares(random, values, 1);
    const own = cause === causes ? Math.max(noise, 0.5) : noise;
    for (let value = 0; value < values; value++) {
      table[cause * values + value] = (value === typical ? 1 - own : 0) + own * row[value]!;
    }
  }
  const weight = weighted && random() < 0.5 ? between(random, 0.4, 1.1) : 1;
  return { table, values, weight, minutes: spread(random, 1, 12), stage: pick(random, 5) };
}

/** An invented problem: overlapping and imperfect fixes, checks that misread, an unlisted cause that nothing cures. */
export function randomProblem(random: Random, { causes, fixes, checks, weighted = true }: ProblemSize): PlanProblem {
  const listed = shares(random, causes, between(random, 0.5, 2));
  const unlisted = between(random, 0, 0.2);
  return {
    posterior: Float64Array.of(...listed.map((share) => share * (1 - unlisted)), unlisted),
    fixes: Array.from({ length: fixes }, (_, fix) => randomFix(random, causes, fix)),
    checks: Array.from({ length: checks }, () => randomCheck(random, causes, weighted)),
    hourValue: spread(random, 8, 60),
    handOverCost: spread(random, 25, 400),
  };
}

/** Up to eight fixes and checks over up to seven causes. */
export function randomSmallSize(random: Random): ProblemSize {
  const total = 3 + pick(random, 6);
  const fixes = Math.max(1, Math.round(total * between(random, 0.3, 1)));
  return { causes: 2 + pick(random, 6), fixes, checks: total - fixes };
}
