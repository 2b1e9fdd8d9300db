import type { Finding } from '../../schemas/finding';
import { type DraftDocument, type DraftStep, emptyDraft } from '../../schemas/submission';

export type StartingPoint = {
  month: string;
  device: string | null;
  complete: boolean;
  /** Read from the words, or set by hand, in their order. */
  findings: readonly Finding[];
  /** What could not be read: it stays in the box to be put into other words. */
  unread: readonly string[];
  newKey: () => string;
};

/** A form that begins with what a look-up already knows: symptoms, checks done, fixes tried. */
export function draftFromQuestion({ month, device, complete, findings, unread, newKey }: StartingPoint): DraftDocument {
  return withFindings(
    { ...emptyDraft(month), device: device ?? '', symptomsComplete: complete, ownWords: unread.join(', ') },
    findings,
    newKey,
  );
}

/** The form with findings added: a symptom or check already there takes the new value, a fix is another attempt. */
export function withFindings(draft: DraftDocument, findings: readonly Finding[], newKey: () => string): DraftDocument {
  const symptoms = new Map(draft.symptoms.map((s) => [s.symptom, s.present]));
  let steps = draft.steps;
  for (const finding of findings) {
    if (finding.kind === 'symptom') symptoms.set(finding.id, finding.value === 'present');
    else steps = withStep(steps, finding, newKey);
  }
  return { ...draft, symptoms: [...symptoms].map(([symptom, present]) => ({ symptom, present })), steps };
}

function withStep(
  steps: readonly DraftStep[],
  finding: Exclude<Finding, { kind: 'symptom' }>,
  newKey: () => string,
): DraftStep[] {
  if (finding.kind === 'fix') {
    return [...steps, { key: newKey(), kind: 'fix', fixes: [{ fix: finding.id, designator: '' }], result: finding.value }];
  }
  if (!steps.some((step) => step.kind === 'check' && step.check === finding.id)) {
    return [...steps, { key: newKey(), kind: 'check', check: finding.id, outcome: finding.value, designator: '', reading: '' }];
  }
  return steps.map((step) => (step.kind === 'check' && step.check === finding.id ? { ...step, outcome: finding.value } : step));
}
