import type { FixResult } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import type { Fix } from '../../shared/schemas/vocabulary';
import type { Random, SimulatedUnit } from '../world';
import { type Bench, nextCheck, nextFix, openingChecks } from './choose-step';
import type { Repairer } from './repairer';
import { beliefs, firstSuspicion, jointResult, type Suspicion, suspect } from './suspicion';

export type CheckDone = { readonly kind: 'check'; readonly check: string; readonly outcome: string };
export type Attempt = { readonly kind: 'fix'; readonly fixes: readonly Fix[]; readonly result: FixResult };

/** What happened on the bench, in order, and how it ended. */
export type Investigation = {
  readonly steps: readonly (CheckDone | Attempt)[];
  readonly end: 'cured' | 'partly' | 'nothing-found' | 'gave-up' | 'not-economical';
  /** Belief per cause at the end, before a cure was counted. */
  readonly belief: Float64Array;
};

type Work = {
  readonly random: Random;
  readonly unit: SimulatedUnit;
  readonly repairer: Repairer;
  readonly bench: Bench;
};

/** P(somebody out of ideas leaves the unit for a week and then goes through all findings again, with more care). */
const SECOND_LOOK = 0.9;

/**
 * One repairer at one unit: first habits, then checks chosen by suspicion, a fix once the suspicion is strong enough, on
 * with the next suspicion where it changed nothing. Everything hangs on the findings so far and on chance; what is really
 * wrong is seen only through the unit's answers.
 */
export function investigate(work: Work, seen: readonly Finding[]): Investigation {
  const { random, bench, repairer } = work;
  const log: Log = { steps: [], findings: [...seen], done: new Set(), attempts: 0, allWell: 0, limit: repairer.maxChecks };
  let suspicion = rethink(work, log.findings, repairer);
  const learn = (finding: Finding): void => {
    log.findings.push(finding);
    suspect(suspicion, finding, { experience: bench.experience, repairer });
  };
  for (const slug of openingChecks(random, repairer, bench)) doCheck(work, log, { slug, learn });

  let looks = random() < SECOND_LOOK ? 2 : 1;
  for (;;) {
    const belief = beliefs(suspicion);
    const situation = { random, repairer, bench, belief, done: log.done };
    const certainty = belief.reduce((a, b) => Math.max(a, b), 0);
    const enough = certainty > repairer.haste || log.done.size >= log.limit;
    const faultless = bench.experience.numbers.causes.indexOf('no-fault-found');
    if ((belief[faultless] ?? 0) > 0.55 && log.allWell >= 5 && enough) return { steps: log.steps, end: 'nothing-found', belief };
    const slug = enough ? null : nextCheck(situation);
    if (slug !== null) {
      doCheck(work, log, { slug, learn });
      continue;
    }
    const fix = log.attempts < repairer.maxFixes ? nextFix(situation) : null;
    if (!fix && looks > 1) {
      looks -= 1;
      log.attempts = Math.min(log.attempts, repairer.maxFixes - 3);
      log.limit = log.done.size + 6;
      suspicion = rethink(work, log.findings, { ...repairer, weight: 0.95, prejudice: 0.3 });
      continue;
    }
    if (!fix) return { steps: log.steps, end: random() < 0.15 ? 'not-economical' : 'gave-up', belief };
    if (tooDear(fix, random)) return { steps: log.steps, end: 'not-economical', belief };
    const end = doFix(work, log, { fix, learn });
    if (end) return { steps: log.steps, end, belief };
  }
}

type Log = {
  readonly steps: (CheckDone | Attempt)[];
  readonly findings: Finding[];
  readonly done: Set<string>;
  attempts: number;
  /** Checks in a row, from the first, that found nothing; far below 0 once one found something. */
  allWell: number;
  /** Number of checks and fixes after which the next thing is a fix. */
  limit: number;
};

function rethink({ random, bench }: Work, findings: readonly Finding[], repairer: Repairer): Suspicion {
  const suspicion = firstSuspicion(random, repairer, bench.experience);
  for (const finding of findings) suspect(suspicion, finding, { experience: bench.experience, repairer });
  return suspicion;
}

type Learn = (finding: Finding) => void;

function doCheck({ unit, bench }: Work, log: Log, { slug, learn }: { slug: string; learn: Learn }): void {
  const outcome = unit.check(slug);
  log.done.add(`check ${slug}`);
  log.steps.push({ kind: 'check', check: slug, outcome });
  log.allWell = outcome === bench.checks.get(slug)?.workingOutcome ? log.allWell + 1 : -20;
  learn({ kind: 'check', id: slug, value: outcome });
}

/** Tries the fix and says how it all ended, or null where the work goes on. */
function doFix(work: Work, log: Log, { fix, learn }: { fix: Fix; learn: Learn }): Investigation['end'] | null {
  const { random, unit } = work;
  const attempt = attemptFix(work, log.done, fix);
  log.steps.push(attempt);
  log.attempts += 1;
  if (attempt.result === 'cured') return 'cured';
  for (const { slug } of attempt.fixes) {
    log.done.add(`fix ${slug}`);
    learn({ kind: 'fix', id: slug, value: unit.fix(slug) });
  }
  log.limit = log.done.size + 2 + Math.floor(5 * random());
  if (attempt.result === 'partly' && random() < 0.25) return 'partly';
  return attempt.result === 'made-worse' && random() < 0.25 ? 'not-economical' : null;
}

/** Long work with parts that cost more than the unit is worth is now and then not begun. */
function tooDear(fix: Fix, random: Random): boolean {
  return fix.partCostCents.high >= 4000 && fix.minutes >= 60 && random() < 0.08;
}

/** The fix, now and then together with another easy one. */
function attemptFix({ unit, random, bench }: Work, done: ReadonlySet<string>, fix: Fix): Attempt {
  const others = bench.fixes.filter(
    (other) =>
      other.slug !== fix.slug &&
      !done.has(`fix ${other.slug}`) &&
      other.stage <= 3 &&
      other.stage >= 1 &&
      ['reflow', 'clean', 'reseat', 'recap'].includes(other.action) &&
      (other.role === fix.role || ['reflow-joints', 'reseat-socketed-chips', 'recap-supply'].includes(other.slug)),
  );
  const together =
    others.length > 0 && fix.stage >= 1 && random() < 0.12 ? [fix, others[Math.floor(random() * others.length)] as Fix] : [fix];
  return { kind: 'fix', fixes: together, result: jointResult(together.map((each) => unit.fix(each.slug))) };
}
