import type { CaseRecord, CaseStep } from '../../schemas/case';
import type { CaseStepView, CaseView } from '../../schemas/case-view';
import type { Stage } from '../../schemas/terms';
import { proofNow } from './proof-now';
import type { VocabularyWords } from './vocabulary-words';

/** A case with the words to show it, in the order in which things happened. */
export function caseView(words: VocabularyWords, { id, status, content, afterwards }: CaseRecord): CaseView {
  const place = words.devices.get(content.device);
  return {
    id,
    status,
    device: {
      slug: content.device,
      label: place?.label ?? content.device,
      level: place?.level ?? 'model',
      model: place?.model.slug ?? content.device,
    },
    month: content.month,
    symptoms: content.symptoms.map((s) => ({ id: s.symptom, label: labelIn(words.symptoms, s.symptom), present: s.present })),
    symptomsComplete: content.symptomsComplete,
    steps: content.steps.map((step, position) => stepView(words, step, position === content.provedByStep)),
    readings: content.readings,
    causes: content.causes.map(({ cause, designators }) => {
      const known = words.causes.get(cause);
      return { id: cause, label: known?.label ?? cause, role: known?.role ?? '', designators };
    }),
    proof: proofNow(content, afterwards),
    outcome: content.outcome,
    afterRepairChecks: content.afterRepairChecks.map((id) => {
      const check = words.checks.get(id);
      return { id, label: check?.label ?? id, role: check?.targetRole ?? '' };
    }),
    soakMinutes: content.soakMinutes,
    narrative: content.narrative,
  };
}

function stepView(words: VocabularyWords, step: CaseStep, proved: boolean): CaseStepView {
  if (step.kind === 'fix') {
    const stages = step.fixes.map((f) => words.fixes.get(f.fix)?.stage ?? 0);
    return {
      kind: 'fix',
      fixes: step.fixes.map((f) => ({ id: f.fix, label: labelIn(words.fixes, f.fix), designator: f.designator })),
      stage: Math.max(...stages) as Stage,
      result: step.result,
    };
  }
  const check = words.checks.get(step.check);
  return {
    kind: 'check',
    id: step.check,
    label: check?.label ?? step.check,
    role: check?.targetRole ?? '',
    stage: check?.stage ?? 0,
    outcome: step.outcome,
    outcomeLabel: check?.outcomes.find((o) => o.slug === step.outcome)?.label ?? step.outcome,
    asWorking: check?.workingOutcome === step.outcome,
    designator: step.designator,
    value: step.value,
    unit: step.unit,
    proved,
  };
}

function labelIn(entries: ReadonlyMap<string, { label: string }>, slug: string): string {
  return entries.get(slug)?.label ?? slug;
}
