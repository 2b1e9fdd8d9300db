import { bm25, inverseDocumentFrequency } from '../../stats/bm25';
import { otherForms } from '../read-query/written-forms';
import { stemOf } from '../read-query/spelling';
import { FIELD_WEIGHTS, SEARCH_FIELDS, type SearchDocument } from './search-document';
import { STOP_WORDS } from './stop-words';

const WORD = /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu;

/** Scores of the documents for a text, in their order; 0 where no word of it stands in one. */
export type TextScorer = (text: string) => Float64Array;

/**
 * BM25 in memory as the SQLite engine has it: the same field weights, and twice as many rows as documents, so that no
 * word is in more than half of them. For measuring; searches go to an engine.
 */
export function createTextScorer(documents: readonly SearchDocument[]): TextScorer {
  const postings = new Map<string, Map<number, number>>();
  const lengths = documents.map((document, at) => {
    let length = 0;
    for (const field of SEARCH_FIELDS) {
      for (const term of termsOf(document[field])) {
        length += 1;
        const list = postings.get(term) ?? new Map<number, number>();
        list.set(at, (list.get(at) ?? 0) + FIELD_WEIGHTS[field]);
        postings.set(term, list);
      }
    }
    return length;
  });
  const rows = documents.length * 2;
  const meanLength = lengths.reduce((sum, length) => sum + length, 0) / rows;
  return (text) => {
    const scores = new Float64Array(documents.length);
    for (const term of new Set(termsOf(text))) {
      const list = postings.get(term);
      if (list === undefined) continue;
      const idf = inverseDocumentFrequency(rows, list.size);
      for (const [at, count] of list) scores[at] = (scores[at] as number) + bm25(count, idf, { length: lengths[at] as number, meanLength });
    }
    return scores;
  };
}

/** Words of a text as they are counted: inflections and other spellings meet. */
function termsOf(text: string): string[] {
  const words = text.toLowerCase().match(WORD) ?? [];
  return words.filter((word) => !STOP_WORDS.has(word)).map(meet);
}

const met = new Map<string, string>();

function meet(word: string): string {
  const known = met.get(word);
  if (known !== undefined) return known;
  const term = [word, ...otherForms(word)].map(stemOf).sort()[0] ?? word;
  met.set(word, term);
  return term;
}
