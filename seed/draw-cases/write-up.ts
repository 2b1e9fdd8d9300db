import type { CaseContent, CaseStep, Proof } from '../../shared/schemas/case';
import type { Board } from '../../shared/schemas/device';
import type { Cause, Vocabulary } from '../../shared/schemas/vocabulary';
import { integer, pick, pickWeighted } from '../random';
import type { Random, SimulatedUnit } from '../world';
import { measuredValue } from './check-value';
import type { Bench } from './choose-step';
import { drawDesignator } from './designators';
import type { Attempt, Investigation } from './investigate';
import type { Repairer } from './repairer';

export type WriteUp = {
  readonly random: Random;
  readonly unit: SimulatedUnit;
  readonly repairer: Repairer;
  readonly bench: Bench;
  readonly board: Board;
  readonly vocabulary: Vocabulary;
  readonly investigation: Investigation;
};

/** What is written down of the work: steps with their numbers and designators. */
export function writtenSteps({ random, repairer, bench, board, investigation }: WriteUp, guilty: string | null): CaseStep[] {
  return investigation.steps.map((step): CaseStep => {
    if (step.kind === 'fix') {
      const fixes = step.fixes.map((fix) => {
        const named = step.result === 'cured' && guilty !== null ? guilty : drawDesignator(random, board, fix.role);
        const fits = board.parts.some((part) => part.designator === named && part.role === fix.role);
        return { fix: fix.slug, designator: fits && random() < 0.25 + 0.6 * repairer.notes ? named : null };
      });
      return { kind: 'fix', fixes, result: step.result };
    }
    const check = bench.checks.get(step.check);
    const measured =
      check && random() < 0.2 + 0.7 * repairer.notes ? measuredValue(random, { check, board: board.slug }, step.outcome) : null;
    const designator = check && random() < 0.35 * repairer.notes ? drawDesignator(random, board, check.targetRole) : null;
    return {
      kind: 'check',
      check: step.check,
      outcome: step.outcome,
      designator,
      value: measured?.value ?? null,
      unit: measured?.unit ?? null,
    };
  });
}

/** The cause that the contributor names: what the work showed, mostly the true one, now and then a neighbour. */
export function namedCause(work: WriteUp): Cause | null {
  const { random, unit, bench, investigation, vocabulary } = work;
  const find = (slug: string | undefined) => vocabulary.causes.find((cause) => cause.slug === slug) ?? null;
  const last = investigation.steps.at(-1);
  if (investigation.end === 'nothing-found') return find('no-fault-found');
  const cured = investigation.end === 'cured' && last?.kind === 'fix' ? last : null;
  if (cured) return find(causeOfCure(work, cured));
  const strongest = strongestCause(bench, investigation.belief);
  const sure = investigation.belief[bench.experience.numbers.causes.indexOf(strongest)] as number;
  const says =
    investigation.end === 'not-economical'
      ? sure > 0.3 && random() < 0.7
      : investigation.end === 'partly'
        ? random() < 0.8
        : random() < 0.25;
  if (!says || strongest === 'no-fault-found') return null;
  return find(strongest === unit.cause ? unit.cause : strongest);
}

function causeOfCure({ random, unit, bench, investigation }: WriteUp, cured: Attempt): string {
  const addressed = cured.fixes
    .flatMap((fix) => fix.addresses)
    .filter((cause) => bench.experience.numbers.causes.includes(cause));
  if (addressed.includes(unit.cause) && random() < 0.965) return unit.cause;
  const belief = (cause: string) => investigation.belief[bench.experience.numbers.causes.indexOf(cause)] as number;
  return [...addressed].sort((a, b) => belief(b) - belief(a))[0] as string;
}

function strongestCause(bench: Bench, belief: Float64Array): string {
  return bench.experience.numbers.causes[belief.indexOf(belief.reduce((a, b) => Math.max(a, b), 0))] as string;
}

export type Proved = { readonly proof: Proof; readonly provedByStep: number | null };

/** How the cause was proved: by a check that spoke against the very part, by the part that cured it, or by its holding. */
export function proofOf({ random, bench, investigation }: WriteUp, cause: Cause): Proved {
  const index = bench.experience.numbers.causes.indexOf(cause.slug);
  const spoke = investigation.steps.findLastIndex((step) => {
    const check = step.kind === 'check' ? bench.checks.get(step.check) : undefined;
    if (step.kind !== 'check' || check?.targetRole !== cause.role || step.outcome === check.workingOutcome) return false;
    const p = bench.experience.likelihood({ kind: 'check', id: step.check, value: step.outcome });
    return (p[index] as number) > 0.5;
  });
  if (spoke >= 0 && random() < 0.72) {
    const step = investigation.steps[spoke];
    const swapped = step?.kind === 'check' && step.outcome === 'cured';
    return { proof: swapped ? 'substitution' : 'measurement', provedByStep: spoke };
  }
  const last = investigation.steps.at(-1);
  if (cause.slug === 'no-fault-found') return { proof: random() < 0.7 ? 'repair-held' : 'suspected', provedByStep: null };
  if (investigation.end !== 'cured' || last?.kind !== 'fix') return { proof: 'suspected', provedByStep: null };
  const replaced = last.fixes.some((fix) => ['replace', 'swap-outside', 'remove'].includes(fix.action));
  const weights: [Proof, number][] = replaced
    ? [
        ['substitution', 0.62],
        ['repair-held', 0.32],
        ['suspected', 0.06],
      ]
    : [
        ['substitution', 0.08],
        ['repair-held', 0.8],
        ['suspected', 0.12],
      ];
  return { proof: pickWeighted(random, weights), provedByStep: null };
}

/** How it ended, in the schema's words. */
export function outcomeOf({ investigation }: WriteUp): CaseContent['outcome'] {
  const words = {
    cured: 'resolved',
    'nothing-found': 'resolved',
    partly: 'partly-resolved',
    'gave-up': 'unresolved',
    'not-economical': 'not-economical',
  } as const;
  return words[investigation.end];
}

/** What was checked again after a repair, and for how long the unit ran. */
export function afterRepair({
  random,
  bench,
  repairer,
  investigation,
}: WriteUp): Pick<CaseContent, 'afterRepairChecks' | 'soakMinutes'> {
  if (investigation.end !== 'cured' && investigation.end !== 'nothing-found') return { afterRepairChecks: [], soakMinutes: null };
  const again = investigation.steps.flatMap((step) =>
    step.kind === 'check' && (bench.checks.get(step.check)?.stage ?? 4) <= 2 && random() < 0.2 + 0.3 * repairer.skill
      ? [step.check]
      : [],
  );
  const soaked = random() < 0.35 + 0.4 * repairer.skill;
  return {
    afterRepairChecks: [...new Set(again)].slice(0, 4),
    soakMinutes: soaked
      ? pick(random, [15, 20, 30, 30, 45, 60, 60, 90, 120, 120, 180, 240, 480]) + (random() < 0.1 ? integer(random, 1, 9) : 0)
      : null,
  };
}
