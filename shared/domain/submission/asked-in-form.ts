import type { CaseStep } from '../../schemas/case';
import type { DraftStep } from '../../schemas/submission';

/** One thing that a moderator asked to have changed: the form's field, and why. */
export type AskedChange = { field: string; reason: string };

/** A change that was asked for, tied to the step it is about by that step's key, for steps can move; null for the rest. */
export type AskedInForm = AskedChange & { stepKey: string | null };

const nameOf = (step: CaseStep | DraftStep): string =>
  step.kind === 'check' ? `check ${step.check}` : `fix ${step.fixes.map(({ fix }) => fix).join(' ')}`;

/**
 * Finds the steps of a form that changes were asked for at. A step that was renamed or taken out since has no place of
 * its own any more: what was asked of it then stands at the list of steps.
 *
 * @param asked fields as they were when it was asked, `steps.2` for the third step of `before`.
 * @param before the steps that were reviewed.
 * @param now the steps of the form.
 */
export function askedInForm(
  asked: readonly AskedChange[],
  before: readonly CaseStep[],
  now: readonly DraftStep[],
): AskedInForm[] {
  return asked.map(({ field, reason }) => {
    const index = /^steps\.(\d+)/.exec(field)?.[1];
    if (index === undefined) return { field, reason, stepKey: null };
    const reviewed = before[Number(index)];
    const name = reviewed === undefined ? null : nameOf(reviewed);
    const there = now[Number(index)];
    const step = there !== undefined && nameOf(there) === name ? there : now.find((other) => nameOf(other) === name);
    return step === undefined ? { field: 'steps', reason, stepKey: null } : { field, reason, stepKey: step.key };
  });
}

/** Where each stands in the form as it is: a step by the place it has now. */
export function askedNow(asked: readonly AskedInForm[], steps: readonly DraftStep[]): AskedChange[] {
  return asked.map(({ field, reason, stepKey }) => {
    if (stepKey === null) return { field, reason };
    const index = steps.findIndex(({ key }) => key === stepKey);
    return { field: index === -1 ? 'steps' : `steps.${index}`, reason };
  });
}
