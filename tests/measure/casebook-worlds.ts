/**
 * Measures the estimators on one fold of each invented world, truth known:
 * `npx tsx tests/measure/casebook-worlds.ts [demo|second] [cases] [folds] [compare on]`. One fold of `folds` is held out and scored; with a
 * fourth number only so many of its records are, by AODE and TAN, too.
 */
import { demoWorld } from '../../seed/demo-world';
import { createCoding, decodeFinding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { evaluateRecords } from '../../shared/stats/evaluate-records';
import type { CodedFinding } from '../../shared/stats/layout';
import { secondWorld } from '../second-world/second-world';

const [name = 'demo', cases = '500', folds = '10', compareOn] = process.argv.slice(2);
const world = name === 'second' ? secondWorld : demoWorld;
const coding = createCoding(world.vocabulary, world.catalogue);
const drawn = world.drawCases(1, Number(cases));
const records = drawn.map(({ content }) => encodeCase(coding, content));

const SEED = 7;
/** The written model's own posterior, per coded cause. */
function truth(index: number, _device: number, findings: readonly CodedFinding[]): Float64Array {
  const shares = new Float64Array(coding.causes.length + 1);
  const board = (drawn[index] as (typeof drawn)[0]).board;
  for (const [slug, p] of world.truePosterior(board, findings.map((f) => decodeFinding(coding, f)))) {
    const cause = coding.causeOf(slug) as number;
    shares[cause] = (shares[cause] as number) + p;
  }
  return shares;
}

const started = process.cpuUsage().user;
const { cuts } = evaluateRecords(coding.layout, records, {
  folds: Number(folds),
  repeats: 1,
  seed: SEED,
  foldsScored: 1,
  truth,
  ...(compareOn !== undefined && { compareOn: Number(compareOn) }),
});
for (const { cut, results } of cuts) {
  for (const r of results) {
    const coverage = r.coverage === null ? '' : `coverage ${r.coverage.covered.toFixed(3)} width ${r.coverage.meanWidth.toFixed(3)}`;
    const scores = `n ${r.count} log loss ${r.logLoss.toFixed(3)} excess ${r.excessLogLoss?.toFixed(3)} accuracy ${r.accuracy.toFixed(3)} ece ${r.ece.toFixed(3)}`;
    console.log(`${name} ${cases} | ${cut.padEnd(20)} | ${r.estimator.padEnd(20)} | ${scores} ${coverage}`);
  }
}
console.log(`${((process.cpuUsage().user - started) / 1e6).toFixed(1)} CPU s`);
