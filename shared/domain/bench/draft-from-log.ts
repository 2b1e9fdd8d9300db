import type { BenchEntry, BenchUnit } from '../../schemas/bench';
import { type DraftDocument, type DraftStep, emptyDraft, SUBMISSION_LIMITS } from '../../schemas/submission';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { readingRow } from '../submission/draft-of-content';
import { bodiesOf, pinReadings } from './bench-log';

type Log = { unit: BenchUnit; entries: readonly BenchEntry[]; month: string; newKey: () => string };

/**
 * The posting form as a bench log fills it in: symptoms, steps in their order with failed attempts, readings at pins, the
 * checks passed after the repair and the soak time. Notes become the story. Where the last fix cured, the outcome says
 * so, and a cause is named where that fix addresses a single one. All of it can still be changed in the form.
 * @param log.entries those that stand, in order
 */
export function draftFromLog(words: VocabularyWords, { unit, entries, month, newKey }: Log): DraftDocument {
  const symptoms = new Map(bodiesOf(entries, 'symptom').map((s) => [s.symptom, s.present]));
  const steps = entries.flatMap(({ body }): DraftStep[] => {
    if (body.kind === 'check') {
      const { check, outcome, designator, reading } = body;
      return [{ key: newKey(), kind: 'check', check, outcome, designator, reading }];
    }
    return body.kind === 'fix' ? [{ key: newKey(), kind: 'fix', fixes: body.fixes, result: body.result }] : [];
  });
  const soak = bodiesOf(entries, 'soak').at(-1);
  const notes = bodiesOf(entries, 'note').map(({ text }) => text.trim());
  return {
    ...emptyDraft(month),
    device: unit.device,
    symptoms: [...symptoms].map(([symptom, present]) => ({ symptom, present })).slice(0, SUBMISSION_LIMITS.symptoms),
    symptomsComplete: unit.complete,
    steps: steps.slice(-SUBMISSION_LIMITS.steps),
    readings: pinReadings(entries)
      .slice(0, SUBMISSION_LIMITS.readings)
      .map((reading) => readingRow(reading, newKey())),
    ...endingOf(words, steps),
    afterRepairChecks: passedAfter(entries).slice(0, SUBMISSION_LIMITS.afterChecks),
    soakMinutes: soak === undefined ? '' : String(soak.minutes),
    narrative: notes.join('\n').slice(0, SUBMISSION_LIMITS.narrative),
  };
}

/** Checks whose last entry after the repair says that they passed. */
export function passedAfter(entries: readonly BenchEntry[]): string[] {
  const last = new Map(bodiesOf(entries, 'after').map(({ check, passed }) => [check, passed]));
  return [...last].filter(([, passed]) => passed).map(([check]) => check);
}

function endingOf(words: VocabularyWords, steps: readonly DraftStep[]): Pick<DraftDocument, 'causes' | 'proof' | 'outcome'> {
  const cure = steps.findLast((step) => step.kind === 'fix');
  if (cure?.kind !== 'fix' || cure.result !== 'cured') return { causes: [], proof: '', outcome: '' };
  const addressed = [...new Set(cure.fixes.flatMap(({ fix }) => words.fixes.get(fix)?.addresses ?? []))];
  const [only] = addressed;
  if (addressed.length !== 1 || only === undefined) return { causes: [], proof: '', outcome: 'resolved' };
  const designators = cure.fixes.map(({ designator }) => designator).filter((d) => d !== '');
  return { causes: [{ cause: only, designators: designators.join(' ') }], proof: 'repair-held', outcome: 'resolved' };
}
