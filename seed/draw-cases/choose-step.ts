import type { Check, Fix } from '../../shared/schemas/vocabulary';
import { pickIndex, pickWeighted } from '../random';
import type { Random } from '../world';
import type { Repairer } from './repairer';
import type { Experience } from './suspicion';

/** Checks and fixes of one board, in the vocabulary's words. */
export type Bench = {
  readonly experience: Experience;
  readonly checks: ReadonlyMap<string, Check>;
  readonly fixes: readonly Fix[];
};

export type Situation = {
  readonly random: Random;
  readonly repairer: Repairer;
  readonly bench: Bench;
  /** Belief per cause. */
  readonly belief: Float64Array;
  readonly done: ReadonlySet<string>;
};

const ROUTINE: readonly string[] = [
  'power-light',
  'visual-inspection',
  'rails-short-test',
  'rail-5v',
  'fuse-continuity',
  'clock-at-processor',
  'reset-line',
  'sockets-reseated',
  'belt-inspected',
  'head-inspected',
  'b-plus-voltage',
  'horizontal-output-test',
  'battery-terminals-inspected',
];

/** What this repairer does first on any unit, whatever is wrong: habits, in the order of the access stages. */
export function openingChecks(random: Random, repairer: Repairer, bench: Bench): string[] {
  const outside = [...bench.checks.values()].filter((check) => check.stage === 0 && check.minutes <= 10);
  const first = outside.filter(() => random() < repairer.outsideFirst * 0.3).map((check) => check.slug);
  const usual = ROUTINE.filter((slug) => bench.checks.has(slug) && random() < repairer.routine * 0.6);
  const slugs = [...new Set([...first, ...usual])].filter((slug) => canDo(bench.checks.get(slug), repairer));
  return slugs.slice(0, 6);
}

function canDo(check: Check | undefined, repairer: Repairer): boolean {
  if (!check) return false;
  const equipped = check.instruments.every((instrument) => repairer.instruments.has(instrument));
  return equipped && check.needs.every((need) => repairer.has.has(need));
}

/**
 * The next check: one that tells something about a cause drawn from the suspicion, rather quick and rather early in the
 * access stages. Its prerequisite comes first where that was not done. Null where nothing is left that tells.
 */
export function nextCheck({ random, repairer, bench, belief, done }: Situation): string | null {
  const suspected = pickIndex(random, belief);
  const choices: [string, number][] = [];
  for (const check of bench.checks.values()) {
    if (done.has(`check ${check.slug}`) || !canDo(check, repairer)) continue;
    const tells = bench.experience.telling(check.slug)[suspected] as number;
    if (tells < 0.15) continue;
    choices.push([check.slug, tells ** 1.5 / (Math.sqrt(check.minutes) * (1 + 0.35 * check.stage))]);
  }
  if (choices.length === 0) return null;
  const chosen = pickWeighted(random, choices);
  const before = bench.checks.get(chosen)?.prerequisites.find((slug) => bench.checks.has(slug) && !done.has(`check ${slug}`));
  return before !== undefined && canDo(bench.checks.get(before), repairer) && random() < 0.8 ? before : chosen;
}

/** A fix for the cause suspected most that was not tried yet, the easier the likelier; null where there is none. */
export function nextFix({ random, repairer, bench, belief, done }: Situation): Fix | null {
  const causes = bench.experience.numbers.causes;
  const ranked = causes.map((cause, index) => [cause, belief[index] as number] as const).sort((a, b) => b[1] - a[1]);
  for (const [cause] of ranked.slice(0, 4)) {
    const open = bench.fixes.filter(
      (fix) =>
        fix.addresses.includes(cause) &&
        !done.has(`fix ${fix.slug}`) &&
        fix.needs.every((need) => repairer.has.has(need) || random() < 0.6),
    );
    if (open.length === 0) continue;
    return pickWeighted(
      random,
      open.map((fix) => [fix, 1 / ((1 + fix.stage) * Math.sqrt(fix.minutes + 10))] as const),
    );
  }
  return null;
}
