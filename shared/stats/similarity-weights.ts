/**
 * What a similar case is ranked by, in nats of agreement (see `findingAgreement`). Chosen by nDCG@10 on held-out cases of
 * a training part of the demo world, never on the casebook that is searched nor on the second world:
 * `npx tsx tests/measure/similar-cases.ts choose`.
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
  /** What BM25 of the question's words in the case counts. */
  text: number;
};

/**
 * On the training part, the shared part added nothing to nearness of the device (weight 0 was best), nor did text relevance:
 * what it knows of the findings is counted already.
 */
export const SIMILARITY_WEIGHTS: SimilarityWeights = {
  shared: 1,
  contradicted: 0.8,
  impliedContradicted: 0.8,
  sameBoard: 0.5,
  sameModel: 0.6,
  sameCategory: 0.2,
  sharesPart: 0,
  proof: [0.3, 0.3, 0.2, 0],
  text: 0,
};
