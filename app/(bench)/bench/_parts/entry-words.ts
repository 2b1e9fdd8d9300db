import type { VocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { EntryBody } from '../../../../shared/schemas/bench';
import type { Reading } from '../../../../shared/schemas/case';
import { FIX_RESULT_WORDS, joinWords } from '../../../_components/words';

const KIND_WORDS: Record<EntryBody['kind'], string> = {
  symptom: 'Symptom',
  check: 'Check',
  fix: 'Fix',
  note: 'Note',
  pin: 'Reading',
  after: 'After the repair',
  soak: 'Soak',
};

/** What kind of entry it is, what it is about, and what it says. */
export function entryWords(words: VocabularyWords, body: EntryBody): { kind: string; about: string; says: string } {
  const kind = KIND_WORDS[body.kind];
  switch (body.kind) {
    case 'symptom':
      return { kind, about: words.symptoms.get(body.symptom)?.label ?? body.symptom, says: body.present ? 'present' : 'absent' };
    case 'check': {
      const check = words.checks.get(body.check);
      const outcome = check?.outcomes.find((o) => o.slug === body.outcome)?.label ?? body.outcome;
      const number = body.reading === '' ? '' : ` (${body.reading})`;
      return { kind, about: `${check?.label ?? body.check}${body.designator ? `, ${body.designator}` : ''}`, says: `${outcome}${number}` };
    }
    case 'fix': {
      const names = body.fixes.map(({ fix, designator }) => `${words.fixes.get(fix)?.label ?? fix}${designator ? `, ${designator}` : ''}`);
      return { kind, about: joinWords(names), says: FIX_RESULT_WORDS[body.result] };
    }
    case 'note':
      return { kind, about: body.text, says: '' };
    case 'pin':
      return { kind, about: `${body.reading.designator} pin ${body.reading.pin}`, says: readingWords(body.reading) };
    case 'after':
      return { kind, about: words.checks.get(body.check)?.label ?? body.check, says: body.passed ? 'passed' : 'not passed' };
    case 'soak':
      return { kind, about: `Ran for ${body.minutes} minutes`, says: '' };
  }
}

/** A reading as it is said: `high`, `4.61 V`. */
export function readingWords({ state, value, unit }: Pick<Reading, 'state' | 'value' | 'unit'>): string {
  return state ?? `${value} ${unit === 'Ohm' ? 'Ω' : unit}`;
}

/** Clock time of an entry, as the bench has it. */
export function timeWords(at: number): string {
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' }).format(at);
}
