import { FIX_RESULTS } from '../../shared/schemas/case';
import type { FindingKey } from '../../shared/schemas/question';
import type { Vocabulary } from '../../shared/schemas/vocabulary';
import { FIX_RESULT_WORDS } from '../_components/words';

/** What the tags need to know of one symptom, check or fix. */
export type VocabularyEntry = FindingKey & {
  label: string;
  values: { value: string; label: string }[];
};

/** Entries live as long as the vocabulary that they were made of, which does not change. */
const known = new WeakMap<Vocabulary, VocabularyEntry[]>();

/** Symptoms, checks and fixes with the values that a finding about them can take. Kept with the vocabulary: read, never change. */
export function vocabularyEntries(vocabulary: Vocabulary): VocabularyEntry[] {
  const entries = known.get(vocabulary) ?? entriesOf(vocabulary);
  known.set(vocabulary, entries);
  return entries;
}

function entriesOf(vocabulary: Vocabulary): VocabularyEntry[] {
  return [
    ...vocabulary.symptoms.map((s) => ({
      kind: 'symptom' as const,
      id: s.slug,
      label: s.label,
      values: [
        { value: 'present', label: 'present' },
        { value: 'absent', label: 'absent' },
      ],
    })),
    ...vocabulary.checks.map((c) => ({
      kind: 'check' as const,
      id: c.slug,
      label: c.label,
      values: c.outcomes.map((o) => ({ value: o.slug, label: o.label })),
    })),
    ...vocabulary.fixes.map((f) => ({
      kind: 'fix' as const,
      id: f.slug,
      label: f.label,
      values: FIX_RESULTS.map((result) => ({ value: result, label: FIX_RESULT_WORDS[result] })),
    })),
  ];
}
