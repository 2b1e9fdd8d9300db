import { type CaseContent, caseContentSchema, designatorSchema } from '../../schemas/case';
import type { DraftCheck, DraftDocument, DraftFix, DraftReadingRow, FieldProblem } from '../../schemas/submission';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { readPin } from './read-pin';
import { readNumber } from './read-number';

/** A case as the form means it, or what keeps it from being one. */
export type DraftReading = { content: CaseContent; problems: [] } | { content: null; problems: FieldProblem[] };

type Report = (field: string, reason: string) => void;

/**
 * Turns what stands in the form into a case: numbers are read, an outcome left open is taken from the check's own
 * rule, designators are split. Problems carry the form's own field paths and say what to do.
 */
export function contentOfDraft(words: VocabularyWords, draft: DraftDocument): DraftReading {
  const problems: FieldProblem[] = [];
  const report: Report = (field, reason) => problems.push({ field, reason });
  const steps = draft.steps.map((step, i) =>
    step.kind === 'check'
      ? checkOf(words, step, (field, reason) => report(`steps.${i}.${field}`, reason))
      : fixOf(step, (field, reason) => report(`steps.${i}.${field}`, reason)),
  );
  const provedAt = draft.steps.findIndex((step) => step.key === draft.provedBy);
  if (draft.provedBy !== '' && draft.steps[provedAt]?.kind !== 'check')
    report('provedBy', 'Choose one of the checks above, or none.');
  if (draft.device === '') report('device', 'Choose the device, or its model where the board is not known.');
  if (draft.outcome === '') report('outcome', 'Say how the repair ended.');
  const content = {
    device: draft.device,
    month: draft.month.trim(),
    symptoms: draft.symptoms,
    symptomsComplete: draft.symptomsComplete,
    steps,
    readings: draft.readings.map((row, i) => readingOf(row, (field, reason) => report(`readings.${i}.${field}`, reason))),
    causes: draft.causes.map(({ cause, designators }, i) => ({
      cause,
      designators: designatorsOf(designators, (reason) => report(`causes.${i}.designators`, reason)),
    })),
    proof: draft.proof === '' ? null : draft.proof,
    provedByStep: draft.provedBy === '' ? null : provedAt,
    outcome: draft.outcome,
    afterRepairChecks: draft.afterRepairChecks,
    soakMinutes: soakOf(draft.soakMinutes, report),
    narrative: draft.narrative.trim(),
  };
  if (problems.length > 0) return { content: null, problems };
  const parsed = caseContentSchema.safeParse(content);
  if (parsed.success) return { content: parsed.data, problems: [] };
  return {
    content: null,
    problems: parsed.error.issues.map((issue) => ({ field: issue.path.join('.'), reason: issue.message })),
  };
}

function checkOf(words: VocabularyWords, step: DraftCheck, report: Report) {
  const rule = words.checks.get(step.check)?.rule ?? null;
  const number = readNumber(step.reading, rule);
  if (step.check === '') report('check', 'Choose the check, or remove this row.');
  if (number.reason !== null) report('reading', number.reason);
  const outcome = step.outcome || number.outcome || '';
  if (step.check !== '' && outcome === '') report('outcome', 'Choose what the check showed.');
  const designator = oneDesignator(step.designator, (reason) => report('designator', reason));
  return { kind: 'check' as const, check: step.check, outcome, designator, value: number.value, unit: number.unit };
}

function fixOf(step: DraftFix, report: Report) {
  if (step.result === '') report('result', 'Say what the fix changed.');
  const fixes = step.fixes.map(({ fix, designator }, i) => {
    if (fix === '') report(`fixes.${i}.fix`, 'Choose the fix, or remove this row.');
    return { fix, designator: oneDesignator(designator, (reason) => report(`fixes.${i}.designator`, reason)) };
  });
  return { kind: 'fix' as const, fixes, result: step.result };
}

function readingOf(row: DraftReadingRow, report: Report) {
  const designator = oneDesignator(row.designator, (reason) => report('designator', reason));
  if (designator === null && row.designator.trim() === '') report('designator', 'Name the part, such as U14, or remove this row.');
  const pin = row.pin.trim();
  if (pin === '') report('pin', 'Write the number or the name of the pin.');
  const { reason, ...read } = readPin(row.reading);
  if (reason !== null) report('reading', reason);
  return { designator, pin, ...read };
}

function oneDesignator(typed: string, report: (reason: string) => void): string | null {
  const found = designatorsOf(typed, report);
  if (found.length > 1) report('Name one part here.');
  return found[0] ?? null;
}

/** `u14, u15` as U14 and U15. */
function designatorsOf(typed: string, report: (reason: string) => void): string[] {
  const found = typed
    .toUpperCase()
    .split(/[\s,;/]+/u)
    .filter((word) => word !== '');
  const wrong = found.find((word) => !designatorSchema.safeParse(word).success);
  if (wrong !== undefined) report(`"${wrong}" is no designator. Write it as on the board, such as U14 or RN2.`);
  return wrong === undefined ? [...new Set(found)] : [];
}

function soakOf(typed: string, report: Report): number | null {
  const text = typed.trim();
  if (text === '') return null;
  const minutes = Number(text);
  if (/^\d{1,6}$/.test(text) && minutes <= 100_000) return minutes;
  report('soakMinutes', 'Write the soak time in whole minutes, such as 60, up to 100000.');
  return null;
}
