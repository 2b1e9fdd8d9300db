import type { CaseContent, CaseStep } from '../../shared/schemas/case';
import type { DeviceCategory } from '../../shared/schemas/terms';
import type { Cause } from '../../shared/schemas/vocabulary';
import type { Random } from '../world';
import type { Lexicon } from './words';

export type CheckStep = Extract<CaseStep, { kind: 'check' }>;
export type FixStep = Extract<CaseStep, { kind: 'fix' }>;

/** A case laid out for telling: nothing in it that the case does not say. */
export type Story = {
  readonly random: Random;
  readonly lexicon: Lexicon;
  readonly content: CaseContent;
  /** What to call the unit. */
  readonly thing: string;
  readonly present: readonly string[];
  readonly absent: readonly string[];
  readonly checks: readonly CheckStep[];
  /** Checks whose outcome was not that of a working unit, and the others. */
  readonly off: readonly CheckStep[];
  readonly fine: readonly CheckStep[];
  readonly failed: readonly FixStep[];
  readonly cure: FixStep | null;
  readonly cause: Cause | null;
};

const THINGS: Readonly<Record<DeviceCategory, readonly string[]>> = {
  'home-computer': ['computer', 'machine', 'unit', 'micro', 'one'],
  console: ['console', 'machine', 'unit', 'box', 'one'],
  handheld: ['handheld', 'unit', 'little thing', 'one'],
  'arcade-board': ['board', 'game board', 'pcb', 'one'],
  monitor: ['monitor', 'set', 'tube', 'one'],
  drive: ['drive', 'unit', 'one', 'mechanism'],
};

export function layOut(
  content: CaseContent,
  category: DeviceCategory,
  { random, lexicon }: Pick<Story, 'random' | 'lexicon'>,
): Story {
  const checks = content.steps.filter((step): step is CheckStep => step.kind === 'check');
  const attempts = content.steps.filter((step): step is FixStep => step.kind === 'fix');
  const isFine = (step: CheckStep) => lexicon.check(step.check).workingOutcome === step.outcome;
  const [first] = content.causes;
  const things = THINGS[category];
  return {
    random,
    lexicon,
    content,
    thing: things[Math.floor(random() * things.length)] as string,
    present: content.symptoms.filter((each) => each.present).map((each) => each.symptom),
    absent: content.symptoms.filter((each) => !each.present).map((each) => each.symptom),
    checks,
    off: checks.filter((step) => !isFine(step)),
    fine: checks.filter(isFine),
    failed: attempts.filter((step) => step.result !== 'cured'),
    cure: attempts.find((step) => step.result === 'cured') ?? null,
    cause: first ? lexicon.cause(first.cause) : null,
  };
}
