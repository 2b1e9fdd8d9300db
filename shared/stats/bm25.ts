/** Saturation of repeated words and weight of a text's length, as SQLite's FTS5 has them. */
export const BM25_DEFAULTS = { k1: 1.2, b: 0.75 } as const;

/** Smallest weight that FTS5 gives a word, however common. */
const LEAST_IDF = 1e-6;

/**
 * Inverse document frequency of Robertson & Sparck Jones as FTS5 computes it: ln((N - n + 0.5) / (n + 0.5)), and next to
 * nothing for a word in half of the documents or more.
 * Source: SQLite, ext/fts5/fts5_aux.c.
 *
 * @param documents N, at least 1
 * @param having n, documents with the word, 0 to N
 */
export function inverseDocumentFrequency(documents: number, having: number): number {
  const idf = Math.log((documents - having + 0.5) / (having + 0.5));
  return idf <= 0 ? LEAST_IDF : idf;
}

/**
 * BM25 of one word in one document, higher is better (FTS5 reports the negative). A query's score is the sum over its
 * words. Robertson & Walker 1994; parameters as in FTS5.
 *
 * @param count weighted number of times that the word stands in the document; 0 gives 0
 * @param length words of the document; `meanLength` over all documents, more than 0
 */
export function bm25(count: number, idf: number, { length, meanLength }: { length: number; meanLength: number }): number {
  const { k1, b } = BM25_DEFAULTS;
  return (idf * count * (k1 + 1)) / (count + k1 * (1 - b + (b * length) / meanLength));
}
