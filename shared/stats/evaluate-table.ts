import { addRecord, createCounts } from './counts';
import { encodeTable } from './encode-table';
import type { Estimator } from './estimator';
import { fitSettings } from './fit-settings';
import { stratifiedFolds } from './folds';
import type { CodedRecord, Layout } from './layout';
import { createPlainEstimator } from './plain-naive-bayes';
import { createScoreBoard, type Scores } from './score-board';
import { createEstimator } from './weighted-naive-bayes';

export type EvaluateOptions = { folds?: number; repeats?: number; seed?: number };

/** An estimator's way from records to predictions; everything it learns comes from these records alone. */
export type Learner = { name: string; learn(layout: Layout, records: readonly CodedRecord[]): Pick<Estimator, 'probabilities'> };

export type TableEvaluation = {
  rows: number;
  causes: number;
  folds: number;
  repeats: number;
  results: ({ estimator: string } & Omit<Scores, 'count'>)[];
};

/** The default estimator, plain naive Bayes and the bare prior, as they are compared on plain tables. */
export const TABLE_LEARNERS: readonly Learner[] = [
  {
    name: 'weighted naive Bayes',
    learn: (layout, records) => createEstimator(layout, countAll(layout, records), fitSettings(layout, records, { unlisted: false })),
  },
  { name: 'naive Bayes', learn: (layout, records) => createPlainEstimator(layout, countAll(layout, records)) },
  {
    name: 'prior',
    learn: (layout, records) => {
      const prior = createPlainEstimator(layout, countAll(layout, records)).prior(0);
      return { probabilities: () => prior };
    },
  },
];

/** Counts of a list of records. */
export function countAll(layout: Layout, records: readonly CodedRecord[]) {
  const counts = createCounts(layout);
  for (const record of records) addRecord(counts, record);
  return counts;
}

/**
 * Cross-validation on any table: each row is predicted by estimators refitted, settings and all, without its fold.
 * Missing cells are skipped; the unlisted share is 0. Results: the default estimator first, then naive Bayes, then the prior.
 * @throws RangeError where the table cannot be used (see `encodeTable`, `stratifiedFolds`)
 */
export function evaluateTable(
  rows: readonly Readonly<Record<string, string>>[],
  causeColumn: string,
  options: EvaluateOptions = {},
  learners: readonly Learner[] = TABLE_LEARNERS,
): TableEvaluation {
  const { folds = 10, repeats = 3, seed = 7 } = options;
  const { layout, records, causes } = encodeTable(rows, causeColumn);
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
