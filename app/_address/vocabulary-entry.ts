import { FIX_RESULTS } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import type { FindingKey } from '../../shared/schemas/question';
import type { Vocabulary } from '../../shared/schemas/vocabulary';
import { FIX_RESULT_WORDS } from '../_components/words';

/** What the tags and the type-ahead need to know of one symptom, check or fix. */
export type VocabularyEntry = FindingKey & {
  label: string;
  synonyms: string[];
  values: { value: string; label: string }[];
};

/** Symptoms, checks and fixes with the values that a finding about them can take. */
export function vocabularyEntries(vocabulary: Vocabulary): VocabularyEntry[] {
  return [
    ...vocabulary.symptoms.map((s) => ({
      kind: 'symptom' as const,
      id: s.slug,
      label: s.label,
      synonyms: s.synonyms,
      values: [
        { value: 'present', label: 'present' },
        { value: 'absent', label: 'absent' },
      ],
    })),
    ...vocabulary.checks.map((c) => ({
      kind: 'check' as const,
      id: c.slug,
      label: c.label,
      synonyms: c.synonyms,
      values: c.outcomes.map((o) => ({ value: o.slug, label: o.label })),
    })),
    ...vocabulary.fixes.map((f) => ({
      kind: 'fix' as const,
      id: f.slug,
      label: f.label,
      synonyms: f.synonyms,
      values: FIX_RESULTS.map((result) => ({ value: result, label: FIX_RESULT_WORDS[result] })),
    })),
  ];
}

/** One thing that can be added with a press: `Clock at the processor: pulsing`. */
export type FindingOption = { finding: Finding; label: string; words: string };

/** Every finding that can be added, one by one, with the words that find it. A fix can be added as tried without change. */
export function findingOptions(entries: VocabularyEntry[]): FindingOption[] {
  return entries.flatMap((entry) => {
    const values = entry.kind === 'fix' ? entry.values.filter((v) => v.value === 'no-change') : entry.values;
    return values.map((v) => {
      const label = `${entry.label}: ${v.label}`;
      return {
        finding: { kind: entry.kind, id: entry.id, value: v.value } as Finding,
        label,
        words: [label, ...entry.synonyms].join(' ').toLowerCase(),
      };
    });
  });
}

/** The option that carries exactly this label, whatever the case of its letters; null where none does. */
export function optionByLabel(options: FindingOption[], label: string): FindingOption | null {
  const wanted = label.trim().toLowerCase();
  return options.find((option) => option.label.toLowerCase() === wanted) ?? null;
}
