/** Measures all estimators on the three open tables, or on one: `npx tsx tests/measure/tables.ts [repeats] [table]`. */
import { evaluateTable } from '../../shared/stats/evaluate-table';
import { CAUSE_COLUMNS, readTable } from '../reference/read-table';

const repeats = Number(process.argv[2] ?? 3);
const tables = ['soybean', 'house-votes-84', 'zoo'] as const;
for (const name of tables.filter((table) => (process.argv[3] ?? table) === table)) {
  const started = performance.now();
  const { results } = evaluateTable(readTable(name), CAUSE_COLUMNS[name], { folds: 10, repeats, seed: 7 });
  console.log(name, `${((performance.now() - started) / 1000).toFixed(1)} s`);
  for (const r of results) {
    console.log(
      `  ${r.estimator.padEnd(28)} acc ${r.accuracy.toFixed(4)} top3 ${r.top3.toFixed(4)} logloss ${r.logLoss.toFixed(4)} brier ${r.brier.toFixed(4)} ece ${r.ece.toFixed(4)}`,
    );
  }
}
