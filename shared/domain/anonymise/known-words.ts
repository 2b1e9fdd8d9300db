import type { DeviceCatalogue } from '../../schemas/device';
import type { Vocabulary } from '../../schemas/vocabulary';
import type { KnownWords } from './personal-detail';
import { matchesOf } from '../text/matches-of';

const WORD = /[\p{L}\p{N}]+/gu;

/** The words of some labels, in lower case and without the apostrophes of possession. */
export function knownWords(labels: Iterable<string>): KnownWords {
  const words = new Set<string>();
  for (const label of labels) for (const [word] of matchesOf(label.toLowerCase(), WORD)) words.add(word);
  return words;
}

/** Every word of the vocabulary and of the catalogue. A person or a place is not one of them by itself. */
export function knownWordsOf(vocabulary: Vocabulary, catalogue: DeviceCatalogue): KnownWords {
  return knownWords(strings([vocabulary, catalogue]));
}

function* strings(value: unknown): Generator<string> {
  if (typeof value === 'string') yield value;
  else if (value !== null && typeof value === 'object') for (const part of Object.values(value)) yield* strings(part);
}
