/**
 * Similar cases on the invented worlds: `npx tsx tests/measure/similar-cases.ts [demo|second] [cases]` scores the weights in
 * use against the baselines on a fifth held out. The cases are drawn with a seed that neither the demo's own casebook has nor
 * the choice of the weights (`choose-similarity.ts`).
 */
import { evaluateSimilar, type SimilarEvaluation } from '../../shared/domain/search/evaluate-similar';
import { SIMILARITY_WEIGHTS } from '../../shared/stats/similarity-weights';
import { searchedWorld } from './searched-world';
import { worldNamed } from './worlds';

const JUDGE_SEED = 12;
const [what = 'demo', count = '2500'] = process.argv.slice(2);

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

const { heldOut, ...task } = searchedWorld(worldNamed(what), JUDGE_SEED, Number(count));
print(what, evaluateSimilar({ ...task, weights: SIMILARITY_WEIGHTS }, heldOut));
