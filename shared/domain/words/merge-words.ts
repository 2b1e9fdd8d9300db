import type { Check, Fix, Symptom, Vocabulary } from '../../schemas/vocabulary';
import type { WordKind } from '../../schemas/word-edit';
import { findWord, mapWords, type Word } from './word-lists';

/** Longest synonym that the schema takes. */
const SYNONYM_MOST = 60;

const union = <T>(...lists: readonly (readonly T[])[]): T[] => [...new Set(lists.flat())];

/** Names joined to an entry's synonyms: each once in whatever case it is written, none that the label says already. */
export function joinSynonyms(word: Pick<Word, 'label' | 'synonyms'>, more: readonly string[]): string[] {
  const known = new Set([word.label.toLowerCase()]);
  return [...word.synonyms, ...more].filter((name) => {
    const key = name.toLowerCase();
    if (name.length > SYNONYM_MOST || known.has(key)) return false;
    known.add(key);
    return true;
  });
}

/**
 * Takes an entry out and has another stand for it: with its names and its categories, and wherever the vocabulary refers to
 * it. Unchanged where either is not there.
 */
export function mergeWords(
  vocabulary: Vocabulary,
  { kind, from, into }: { kind: WordKind; from: string; into: string },
): Vocabulary {
  const gone = findWord(vocabulary, kind, from);
  if (gone === undefined || from === into || findWord(vocabulary, kind, into) === undefined) return vocabulary;
  const merged = mapWords(vocabulary, kind, (word) => {
    if (word.slug === from) return null;
    return word.slug === into ? takeOver(kind, word, gone) : word;
  });
  return renameReferences(merged, kind, from, into);
}

function takeOver(kind: WordKind, word: Word, gone: Word): Word {
  const categories = union(word.categories, gone.categories);
  const joined = { ...word, synonyms: joinSynonyms(word, [gone.label, ...gone.synonyms]), categories };
  if (kind === 'symptom') {
    return { ...joined, absentPhrases: union((word as Symptom).absentPhrases, (gone as Symptom).absentPhrases) } as Symptom;
  }
  if (kind === 'fix') return { ...joined, addresses: union((word as Fix).addresses, (gone as Fix).addresses) } as Fix;
  if (kind === 'check') return { ...joined, outcomes: joinOutcomes(word as Check, gone as Check) } as Check;
  return joined;
}

function joinOutcomes(word: Check, gone: Check): Check['outcomes'] {
  return word.outcomes.map((outcome) => {
    const other = gone.outcomes.find(({ slug }) => slug === outcome.slug);
    return other === undefined ? outcome : { ...outcome, synonyms: joinSynonyms(outcome, [other.label, ...other.synonyms]) };
  });
}

function renameReferences(vocabulary: Vocabulary, kind: WordKind, from: string, into: string): Vocabulary {
  const renamed = (slugs: readonly string[], self: string) =>
    slugs.includes(from) ? union(slugs.map((slug) => (slug === from ? into : slug))).filter((slug) => slug !== self) : [...slugs];
  if (kind === 'symptom') {
    return mapWords(
      vocabulary,
      'symptom',
      (word) => ({ ...word, hiddenBy: renamed((word as Symptom).hiddenBy, word.slug) }) as Symptom,
    );
  }
  if (kind === 'check') {
    return mapWords(
      vocabulary,
      'check',
      (word) => ({ ...word, prerequisites: renamed((word as Check).prerequisites, word.slug) }) as Check,
    );
  }
  if (kind === 'cause') {
    return mapWords(vocabulary, 'fix', (word) => ({ ...word, addresses: renamed((word as Fix).addresses, '') }) as Fix);
  }
  return vocabulary;
}
