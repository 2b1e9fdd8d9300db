import { encodeTable } from './encode-table';
import { stratifiedFolds } from './folds';
import { createScoreBoard, type Scores } from './score-board';
import { type Learner, tableLearners } from './table-learners';

export { countAll } from './count-all';

export type EvaluateOptions = { folds?: number; repeats?: number; seed?: number };

export type TableEvaluation = {
  rows: number;
  causes: number;
  folds: number;
  repeats: number;
  results: ({ estimator: string } & Omit<Scores, 'count'>)[];
};

/**
 * Cross-validation on any table: each row is predicted by estimators refitted, settings and all, without its fold.
 * Missing cells are skipped; the unlisted share is 0. Results: the default estimator first, then naive Bayes, the
 * prior and the other estimators.
 * @param chosen the estimators; those of `tableLearners` unless given
 * @throws RangeError where the table cannot be used (see `encodeTable`, `stratifiedFolds`)
 */
export function evaluateTable(
  rows: readonly Readonly<Record<string, string>>[],
  causeColumn: string,
  options: EvaluateOptions = {},
  chosen?: readonly Learner[],
): TableEvaluation {
  const { folds = 10, repeats = 3, seed = 7 } = options;
  const { layout, records, causes } = encodeTable(rows, causeColumn);
  const learners = chosen ?? tableLearners(layout);
  const boards = learners.map(() => createScoreBoard());
  for (let repeat = 0; repeat < repeats; repeat += 1) {
    const fold = stratifiedFolds(records, folds, seed + repeat);
    for (let held = 0; held < folds; held += 1) {
      const training = records.filter((_, i) => fold[i] !== held);
      learners.forEach(({ learn }, i) => {
        const estimator = learn(layout, training);
        records.forEach((record, r) => {
          if (fold[r] !== held) return;
          const target = [{ cause: record.causes[0] as number, share: 1 }];
          boards[i]?.add({ probability: estimator.probabilities(0, record.findings), target });
        });
      });
    }
  }
  const results = boards.map((board, i) => {
    const { count: _, ...scores } = board.scores();
    return { estimator: (learners[i] as Learner).name, ...scores };
  });
  return { rows: rows.length, causes: causes.length, folds, repeats, results };
}
