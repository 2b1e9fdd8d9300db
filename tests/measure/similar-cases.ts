/**
 * Similar cases on the invented worlds: `npx tsx tests/measure/similar-cases.ts [demo|second] [cases]` scores the weights in
 * use against the baselines on a fifth held out; `... choose [cases]` chooses weights on a training part of the demo world.
 * Cases are drawn with a seed that the demo's own casebook does not have.
 */
import type { World } from '../../seed/world';
import { addCase, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { vocabularyWords } from '../../shared/domain/casebook/vocabulary-words';
import { createCoding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { evaluateSimilar, type SimilarEvaluation, type SimilarTask } from '../../shared/domain/search/evaluate-similar';
import { searchDocument } from '../../shared/domain/search/search-document';
import { createTextScorer } from '../../shared/domain/search/text-scores';
import { fitSettings } from '../../shared/stats/fit-settings';
import { stratifiedFolds } from '../../shared/stats/folds';
import { SIMILARITY_WEIGHTS, type SimilarityWeights } from '../../shared/stats/similarity-weights';
import { worldNamed } from './worlds';

const [what = 'demo', count = '2500'] = process.argv.slice(2);
const SEEDS = { choose: 11, judge: 12 };

/** A case id: 16 letters. */
const plainId = (i: number) => [...i.toString(26).padStart(16, '0')].map((d) => String.fromCharCode(97 + Number.parseInt(d, 26))).join('');

/** One fifth of the cases held out, the others in a casebook with settings fitted to them. */
function prepare(world: World, seed: number, cases: number) {
  const coding = createCoding(world.vocabulary, world.catalogue);
  const contents = world.drawCases(seed, cases).map(({ content }) => content);
  const records = contents.map((content) => encodeCase(coding, content));
  const fold = stratifiedFolds(records, 5, 7);
  const learned = contents.filter((_, i) => fold[i] !== 0);
  const settings = fitSettings(coding.layout, records.filter((_, i) => fold[i] !== 0));
  const model = createCasebookModel(world.vocabulary, world.catalogue, () => settings);
  const words = vocabularyWords(world.vocabulary, world.catalogue);
  const cased = learned.map((content, i) => ({ id: plainId(i), status: 'accepted' as const, content }));
  for (const record of cased) addCase(model, record);
  const textScores = createTextScorer(cased.map((record) => searchDocument(words, record, false)));
  return { model, textScores, heldOut: records.filter((_, i) => fold[i] === 0) };
}

const own = (evaluation: SimilarEvaluation) => evaluation.map(({ results }) => results[0]?.ndcg10 ?? 0);
const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Climbs along one weight at a time while the mean nDCG@10 over the four cuts grows. */
function choose(task: Omit<SimilarTask, 'weights'>, heldOut: Parameters<typeof evaluateSimilar>[1]): void {
  const score = (weights: SimilarityWeights) => mean(own(evaluateSimilar({ ...task, weights, rankers: ['weighted findings'] }, heldOut)));
  let best: SimilarityWeights = SIMILARITY_WEIGHTS;
  let reached = score(best);
  const names = ['contradicted', 'impliedContradicted', 'sharesPart', 'sameBoard', 'sameModel', 'sameCategory', 'text'] as const;
  for (let round = 0; round < 2; round += 1) {
    const before = reached;
    for (const name of names) {
      // BM25 comes in tens where agreement comes in ones.
      const step = name === 'text' ? 0.02 : 0.25;
      for (const to of [best[name] * 0.5, best[name] * 1.5, best[name] + step, Math.max(0, best[name] - step), 0]) {
        const tried = { ...best, [name]: to };
        const got = score(tried);
        if (got > reached + 1e-4) [best, reached] = [tried, got];
      }
    }
    for (const scale of [0, 0.5, 2]) {
      const tried = { ...best, proof: best.proof.map((p) => p * scale) as unknown as SimilarityWeights['proof'] };
      const got = score(tried);
      if (got > reached + 1e-4) [best, reached] = [tried, got];
    }
    console.log(`round ${round + 1}: mean nDCG@10 ${reached.toFixed(4)}`, JSON.stringify(best));
    if (reached - before < 5e-4) break;
  }
}

function print(name: string, evaluation: SimilarEvaluation): void {
  for (const { cut, questions, results } of evaluation) {
    const strongest = Math.max(...results.slice(1).map((r) => r.ndcg10));
    for (const r of results) {
      const gain = r === results[0] ? ` (${((r.ndcg10 / strongest - 1) * 100).toFixed(1)} % over the best baseline)` : '';
      console.log(
        `${name} | ${cut.padEnd(20)} | n ${questions} | ${r.ranker.padEnd(18)} | nDCG@10 ${r.ndcg10.toFixed(3)} hit@1 ${r.hit1.toFixed(3)} @3 ${r.hit3.toFixed(3)} @10 ${r.hit10.toFixed(3)} MRR ${r.mrr.toFixed(3)} causes ${r.distinctCauses.toFixed(2)}${gain}`,
      );
    }
  }
}

if (what === 'choose') {
  const { heldOut, ...task } = prepare(worldNamed('demo'), SEEDS.choose, Number(count));
  choose(task, heldOut);
} else {
  const { heldOut, ...task } = prepare(worldNamed(what), SEEDS.judge, Number(count));
  print(what, evaluateSimilar({ ...task, weights: SIMILARITY_WEIGHTS }, heldOut));
}
