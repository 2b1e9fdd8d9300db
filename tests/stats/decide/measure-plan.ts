/**
 * Prints how far repair plans lie above the exact optimum on random small problems, and what they take at full size.
 * `npx tsx tests/stats/decide/measure-plan.ts [problems] [seed]`
 */
import { repairPlan } from '../../../shared/stats/decide/repair-plan';
import { createRandom } from '../../../shared/stats/random';
import { exactCost, policyCost } from './exact-plan';
import { fullSizeProblem } from './full-size-problem';
import { randomProblem, randomSmallSize } from './random-problem';

const problems = Number(process.argv[2] ?? 500);
const seed = Number(process.argv[3] ?? 20_240_611);

for (const effort of [undefined, 600, 100, 30]) {
  const random = createRandom(seed);
  const excesses = Array.from({ length: problems }, () => {
    const problem = { ...randomProblem(random, randomSmallSize(random)), effort };
    return policyCost(problem, repairPlan(problem).policy) / exactCost(problem) - 1;
  });
  const mean = excesses.reduce((a, b) => a + b, 0) / problems;
  const exact = excesses.filter((excess) => excess < 1e-9).length;
  const percent = (share: number) => `${(100 * share).toFixed(4)} %`;
  console.log(
    `effort ${effort ?? 'default'}: mean excess ${percent(mean)}, worst ${percent(Math.max(...excesses))}, exact ${exact} of ${problems}`,
  );
}

const random = createRandom(9);
for (let round = 0; round < 8; round++) {
  const problem = fullSizeProblem(random);
  const started = process.cpuUsage();
  const plan = repairPlan(problem);
  const milliseconds = process.cpuUsage(started).user / 1000;
  const longer = repairPlan({ ...problem, effort: 40_000 });
  const ratio = plan.expectedCost / longer.expectedCost;
  console.log(
    `full size: ${milliseconds.toFixed(0)} ms of computing, ${plan.evaluations} situations, ${ratio.toFixed(3)} of 40,000 situations' cost`,
  );
}
