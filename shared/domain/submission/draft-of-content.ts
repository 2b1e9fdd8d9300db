import type { CaseContent, CaseStep, Reading } from '../../schemas/case';
import { type DraftDocument, type DraftReadingRow, type DraftStep, emptyDraft, type Proposal } from '../../schemas/submission';

/** A stored case as the form shows it: the inverse of `contentOfDraft`. */
export function draftOfContent(content: CaseContent, proposals: Omit<Proposal, 'key'>[], newKey: () => string): DraftDocument {
  const steps = content.steps.map((step) => stepOf(step, newKey()));
  return {
    ...emptyDraft(content.month),
    device: content.device,
    symptoms: content.symptoms,
    symptomsComplete: content.symptomsComplete,
    steps,
    causes: content.causes.map(({ cause, designators }) => ({ cause, designators: designators.join(' ') })),
    proof: content.proof ?? '',
    provedBy: content.provedByStep === null ? '' : (steps[content.provedByStep]?.key ?? ''),
    outcome: content.outcome,
    afterRepairChecks: content.afterRepairChecks,
    soakMinutes: content.soakMinutes === null ? '' : String(content.soakMinutes),
    readings: content.readings.map((reading) => readingRow(reading, newKey())),
    narrative: content.narrative,
    proposals: proposals.map((proposal) => ({ key: newKey(), ...proposal })),
  };
}

/** A reading as the form shows it: its state, or its number with the unit. */
export function readingRow({ designator, pin, state, value, unit }: Reading, key: string): DraftReadingRow {
  return { key, designator, pin, reading: state ?? `${value} ${unit}` };
}

function stepOf(step: CaseStep, key: string): DraftStep {
  if (step.kind === 'fix') {
    return {
      key,
      kind: 'fix',
      fixes: step.fixes.map(({ fix, designator }) => ({ fix, designator: designator ?? '' })),
      result: step.result,
    };
  }
  const { check, outcome, designator, value, unit } = step;
  return { key, kind: 'check', check, outcome, designator: designator ?? '', reading: value === null ? '' : `${value} ${unit}` };
}
