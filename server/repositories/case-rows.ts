import type { CaseContent, CaseRecord } from '../../shared/schemas/case';

/** Where a device slug points: a model, and a board revision where that is known. */
export type DevicePlace = { modelSlug: string; boardSlug: string | null };

/** The case's own row. */
export function caseFileRow(record: CaseRecord, at: DevicePlace, hash: string, occurrence: number) {
  const { content, id, status } = record;
  return {
    id,
    modelSlug: at.modelSlug,
    boardSlug: at.boardSlug,
    month: content.month,
    narrative: content.narrative,
    complete: content.symptomsComplete,
    proof: content.proof,
    provedByStep: content.provedByStep,
    outcome: content.outcome,
    soakMinutes: content.soakMinutes,
    status,
    contentHash: hash,
    occurrence,
  };
}

/** Rows of every table below the case, in order. */
export function caseChildRows(caseId: string, content: CaseContent) {
  return {
    symptoms: content.symptoms.map((s, position) => ({ caseId, position, symptomSlug: s.symptom, present: s.present })),
    steps: content.steps.map((step, position) => ({ caseId, position, kind: step.kind, ...stepColumns(step) })),
    stepFixes: content.steps.flatMap((step, stepPosition) =>
      step.kind === 'fix'
        ? step.fixes.map((f, position) => ({ caseId, stepPosition, position, fixSlug: f.fix, designator: f.designator }))
        : [],
    ),
    readings: content.readings.map((r, position) => ({ caseId, position, ...r })),
    causes: content.causes.map((c, position) => ({ caseId, position, causeSlug: c.cause })),
    designators: content.causes.flatMap((c, causePosition) =>
      c.designators.map((designator, position) => ({ caseId, causePosition, position, designator })),
    ),
    afterChecks: content.afterRepairChecks.map((checkSlug, position) => ({ caseId, position, checkSlug })),
  };
}

function stepColumns(step: CaseContent['steps'][number]) {
  if (step.kind === 'fix') {
    return { checkSlug: null, outcomeSlug: null, designator: null, value: null, unit: null, result: step.result };
  }
  const { check, outcome, designator, value, unit } = step;
  return { checkSlug: check, outcomeSlug: outcome, designator, value, unit, result: null };
}
