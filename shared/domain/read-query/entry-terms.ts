import type { Vocabulary } from '../../schemas/vocabulary';
import { RESULT_PHRASES } from './fix-words';
import type { Phrase, Target } from './phrase';
import { phraseTerms, phraseWords } from './phrase-terms';

/** Term → symptoms of which at least half of the written phrases have it. */
export function characteristicTerms(vocabulary: Vocabulary): Map<string, Set<string>> {
  const characteristic = new Map<string, Set<string>>();
  for (const symptom of vocabulary.symptoms) {
    const phrases = [symptom.label, ...symptom.synonyms].map((p) => new Set(phraseTerms(phraseWords(p), false)?.required ?? []));
    for (const term of new Set(phrases.flatMap((p) => [...p]))) {
      if (phrases.filter((p) => p.has(term)).length * 2 < phrases.length) continue;
      characteristic.set(term, (characteristic.get(term) ?? new Set<string>()).add(symptom.slug));
    }
  }
  return characteristic;
}

/** Terms before and after the "but" of phrases that contain one. */
export function contrastsOf(vocabulary: Vocabulary): { before: string[]; after: string[] }[] {
  const phrases = [...vocabulary.symptoms.flatMap((s) => [s.label, ...s.synonyms]), ...Object.values(RESULT_PHRASES).flat()];
  return phrases.flatMap((phrase) => {
    const words = phraseWords(phrase);
    const at = words.indexOf('but');
    if (at < 1) return [];
    const before = phraseTerms(words.slice(0, at), false)?.required ?? [];
    const after = phraseTerms(words.slice(at + 1), false)?.required ?? [];
    return before.length > 0 && after.length > 0 ? [{ before, after }] : [];
  });
}

/** Term → symptoms (present) and checks that have it as a needed word of a phrase of quality `written` or better. */
export function entriesOf(phrases: readonly Phrase[], written: number): Map<string, Map<string, Target>> {
  const entries = new Map<string, Map<string, Target>>();
  for (const phrase of phrases) {
    for (const { target, quality } of phrase.targets) {
      const counts = target.kind === 'check' || (target.kind === 'symptom' && target.value === 'present');
      if (!counts || quality < written) continue;
      for (const term of phrase.required) {
        const known = entries.get(term) ?? new Map<string, Target>();
        known.set(`${target.kind} ${target.id}`, target);
        entries.set(term, known);
      }
    }
  }
  return entries;
}
