/**
 * Chooses `SIMILARITY_WEIGHTS`: `npx tsx tests/measure/choose-similarity.ts [cases]`. Climbs along one weight at a time while
 * the mean nDCG@10 grows, over the four cuts of two casebooks of the demo world, drawn with seeds that nothing is reported on.
 */
import { evaluateSimilar, type SimilarTask } from '../../shared/domain/search/evaluate-similar';
import type { OutcomeTable } from '../../shared/stats/estimator';
import { SIMILARITY_WEIGHTS, type SimilarityWeights } from '../../shared/stats/similarity-weights';
import { searchedWorld } from './searched-world';
import { worldNamed } from './worlds';

const SEEDS = [11, 13];
const ROUNDS = 3;
const [count = '2500'] = process.argv.slice(2);

/** Steps up and down from the value so far; `shared` stays 1, as only ratios matter. */
const STEPS: Partial<Record<keyof SimilarityWeights, number>> = {
  length: 0.1,
  contradicted: 0.2,
  impliedContradicted: 0.2,
  sameBoard: 0.1,
  sameModel: 0.1,
  sameCategory: 0.1,
  sharesPart: 0.1,
  // BM25 comes in tens where agreement comes in ones.
  text: 0.01,
};
/** Worth of the four proofs: a confirmed cause is worth more than a guess. */
const PROOFS: SimilarityWeights['proof'][] = [0.1, 0.2, 0.3, 0.5].flatMap((most) => [
  [most, most, most * 0.8, most * 0.4],
  [most, most, most * 0.6, 0],
]);

type Prepared = ReturnType<typeof searchedWorld>;

/** What does not depend on the weights is worked out once: tables and scores of texts. */
function keepTables({ model, textScores, heldOut }: Prepared): Omit<SimilarTask, 'weights'> & Pick<Prepared, 'heldOut'> {
  const { estimator } = model;
  const tables = new Map<string, OutcomeTable>();
  const texts = new Map<string, Float64Array>();
  const kept = <K, V>(map: Map<K, V>, key: K, make: () => V): V => {
    const value = map.get(key) ?? make();
    map.set(key, value);
    return value;
  };
  const outcomeTable = (device: number, observable: number) =>
    kept(tables, `${device} ${observable}`, () => estimator.outcomeTable(device, observable));
  return {
    model: { ...model, estimator: { ...estimator, outcomeTable } },
    textScores: (text) => kept(texts, text, () => textScores(text)),
    heldOut,
  };
}

const prepared = SEEDS.map((seed) => keepTables(searchedWorld(worldNamed('demo'), seed, Number(count))));
let scored = 0;

/** Mean nDCG@10 over casebooks and cuts. */
function score(weights: SimilarityWeights): number {
  scored += 1;
  const values = prepared.flatMap(({ heldOut, ...task }) =>
    evaluateSimilar({ ...task, weights, rankers: ['weighted findings'] }, heldOut).map(({ results }) => results[0]?.ndcg10 ?? 0),
  );
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}

let best: SimilarityWeights = SIMILARITY_WEIGHTS;
let reached = score(best);
console.log(`weights in use: ${reached.toFixed(4)}`);
const take = (tried: SimilarityWeights) => {
  const got = score(tried);
  if (got <= reached + 1e-4) return;
  [best, reached] = [tried, got];
  console.log(`${scored}: ${reached.toFixed(4)} ${JSON.stringify(best)}`);
};
for (let round = 0; round < ROUNDS; round += 1) {
  const before = reached;
  for (const [name, step] of Object.entries(STEPS) as [keyof typeof STEPS, number][]) {
    const from = best[name] as number;
    for (const by of [-2, -1, 1, 2]) take({ ...best, [name]: Math.max(0, Math.round((from + by * step) * 100) / 100) });
  }
  for (const proof of PROOFS) take({ ...best, proof });
  console.log(`round ${round + 1}: ${reached.toFixed(4)} after ${scored} trials`);
  if (reached - before < 5e-4) break;
}
