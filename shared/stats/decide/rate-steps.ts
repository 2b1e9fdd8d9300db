import type { ReadyCheck, ReadyFix, ReadyProblem } from './plan-problem';

/** Chances and gains below this are not followed. */
export const NEGLIGIBLE = 1e-12;

/** Causes believed less than this do not count in the rating of checks; they do in everything else. */
const RATED_BELIEF = 1e-4;

/** A check that tells less than this, in nats, is not weighed. */
const LEAST_INFORMATION = 1e-6;

type Rated = { position: number; rate: number };

/** Chance that a fix cures under these beliefs. */
export function cureChance({ causes, cure }: ReadyFix, belief: Float64Array): number {
  let chance = 0;
  for (let entry = 0; entry < causes.length; entry++) chance += belief[causes[entry]!]! * cure[entry]!;
  return chance;
}

/** Chance to cure per cost. */
export function fixRate(fix: ReadyFix, belief: Float64Array): number {
  return cureChance(fix, belief) / Math.max(fix.cost, NEGLIGIBLE);
}

/** Chance of each outcome of a check under these beliefs. */
export function outcomeChances(belief: Float64Array, { table, values }: ReadyCheck): Float64Array {
  const chances = new Float64Array(values);
  for (let cause = 0; cause < belief.length; cause++) {
    const mass = belief[cause]!;
    if (mass === 0) continue;
    for (let value = 0, cell = cause * values; value < values; value++) chances[value]! += mass * table[cell + value]!;
  }
  return chances;
}

/** Positions of the fixes not tried that may cure, by chance to cure per cost, at most `count`. */
export function bestFixes({ fixes }: ReadyProblem, belief: Float64Array, tried: Uint8Array, count: number): number[] {
  const rated: Rated[] = [];
  fixes.forEach((fix, position) => {
    if (tried[position]) return;
    const rate = fixRate(fix, belief);
    if (rate * Math.max(fix.cost, NEGLIGIBLE) > NEGLIGIBLE) rated.push({ position, rate });
  });
  return leading(rated, count);
}

/** Positions of the checks not done and open that tell something, by mutual information per cost, at most `count`. */
export function bestChecks({ checks }: ReadyProblem, belief: Float64Array, done: Uint8Array, count: number): number[] {
  const believed: number[] = [];
  for (let cause = 0; cause < belief.length; cause++) if (belief[cause]! >= RATED_BELIEF) believed.push(cause);
  const rated: Rated[] = [];
  checks.forEach((check, position) => {
    if (done[position] || !check.prerequisites.every((needed) => done[needed])) return;
    const information = outcomeInformation(belief, believed, check);
    if (information > LEAST_INFORMATION) rated.push({ position, rate: information / Math.max(check.cost, NEGLIGIBLE) });
  });
  return leading(rated, count);
}

function leading(rated: Rated[], count: number): number[] {
  const sorted = rated.sort((a, b) => b.rate - a.rate);
  return sorted.slice(0, count).map(({ position }) => position);
}

/** Mutual information of outcome and cause in nats, over the causes that are believed at all. */
function outcomeInformation(belief: Float64Array, believed: readonly number[], check: ReadyCheck): number {
  const { table, values, rowInformation } = check;
  const chances = new Float64Array(values);
  let information = 0;
  let total = 0;
  for (let place = 0; place < believed.length; place++) {
    const cause = believed[place]!;
    const mass = belief[cause]!;
    total += mass;
    information += mass * rowInformation[cause]!;
    for (let value = 0, cell = cause * values; value < values; value++) chances[value]! += mass * table[cell + value]!;
  }
  for (let value = 0; value < values; value++) {
    const chance = chances[value]!;
    if (chance > 0) information -= chance * Math.log(chance / total);
  }
  return information;
}
