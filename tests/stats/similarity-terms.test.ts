import { expect, it } from 'vitest';
import { rankSimilar } from '../../shared/stats/rank-similar';
import { addToIndex, createRecordIndex } from '../../shared/stats/record-index';
import { similarityTerms } from '../../shared/stats/similarity-terms';
import { SIMILARITY_WEIGHTS as W } from '../../shared/stats/similarity-weights';
import { recorded, recordOf, smallLayout } from './small-world';

// Two equally likely causes; symptom 0 is present in 9 of 10 units with the first, in 1 of 10 with the second.
const estimator = {
  prior: () => Float64Array.of(0.5, 0.5, 0, 0, 0),
  outcomeTable: () => ({ table: Float64Array.of(0.1, 0.9, 0.9, 0.1, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5), weight: 1 }),
};

it('ranks by agreement, contradiction, nearness, proof and length, each with its weight', () => {
  const index = createRecordIndex(smallLayout());
  const shared = recorded(0, 1);
  const near = addToIndex(index, recordOf(4, [0], [shared]));
  const model = addToIndex(index, recordOf(5, [0], [shared]));
  const far = addToIndex(index, recordOf(9, [0], [shared]));
  const guessed = addToIndex(index, recordOf(4, [0], [shared], 3));
  const long = addToIndex(index, recordOf(4, [0], [shared, recorded(2, 1), recorded(3, 1)]));
  const against = addToIndex(index, recordOf(4, [0], [shared, recorded(1, 0)]));
  const terms = similarityTerms(estimator, { index, device: 4, weights: W });
  const findings = [{ observable: 0, value: 1 }, { observable: 1, value: 1 }];
  const ranked = rankSimilar(index, { device: 4, findings }, { ...terms, limit: 10 });
  const score = new Map(ranked.map((hit) => [hit.row, hit.score]));
  const behind = (row: number) => (score.get(near) as number) - (score.get(row) as number);
  // Agreement of equal values as in the test of `findingAgreement`: ln .41/.25; of different ones ln .09/.25.
  expect(score.get(near)).toBeCloseTo(W.shared * Math.log(0.41 / 0.25) + W.sameBoard + W.proof[0], 9);
  expect(behind(model)).toBeCloseTo(W.sameBoard - W.sameModel, 9);
  expect(behind(far)).toBeCloseTo(W.sameBoard, 9);
  expect(behind(guessed)).toBeCloseTo(W.proof[0] - W.proof[3], 9);
  expect(behind(long)).toBeCloseTo(W.length * Math.log(3), 9);
  expect(behind(against)).toBeCloseTo(W.length * Math.log(2) - W.contradicted * Math.log(0.09 / 0.25), 9);
});
