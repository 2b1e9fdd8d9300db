/**
 * What a similar case is ranked by, in nats of agreement (see `findingAgreement`). Chosen by nDCG@10 on the held-out fifths of
 * two casebooks of the demo world that nothing is reported on (seeds 11 and 13, 2,500 cases each), never on the second world:
 * one weight at a time, in the steps of `tests/measure/choose-similarity.ts` (text in steps of .02), over terms worked out
 * beforehand. That program does the same from the records; it was run with 1,000 cases each, for part of its way.
 */
export type SimilarityWeights = {
  /** What a shared finding counts, times its agreement. */
  shared: number;
  /** What a contradicted finding counts, times its agreement (which is negative then). */
  contradicted: number;
  /** The same where the unit's value was not stated but follows (a symptom that a complete list leaves out). */
  impliedContradicted: number;
  /** A case on the very board, on another board of the model, of the same category: the nearest that holds is added. */
  sameBoard: number;
  sameModel: number;
  sameCategory: number;
  /** The part that was at fault there sits on the board asked about too: the same role and part number. */
  sharesPart: number;
  /** By how the cause was proved, in the order of the schema's proofs; a case without a cause adds nothing. */
  proof: readonly [number, number, number, number];
  /** What a case loses by its length, times ln of the number of its findings (255 at most): a long record shares something with every unit. */
  length: number;
  /** What BM25 of the question's words in the case counts. */
  text: number;
};

/**
 * The proof is graded by hand within what the measure leaves open: in the demo a guess is right nearly as often as a proof, so
 * equal weights would score .002 better there. On the training casebooks neither the shared part nor text relevance added anything:
 * what the text knows of the findings is counted already.
 */
export const SIMILARITY_WEIGHTS: SimilarityWeights = {
  shared: 1,
  contradicted: 1.4,
  impliedContradicted: 1.2,
  sameBoard: 0.6,
  sameModel: 0.5,
  sameCategory: 0.2,
  sharesPart: 0,
  proof: [0.3, 0.3, 0.25, 0.1],
  length: 0.5,
  text: 0,
};
