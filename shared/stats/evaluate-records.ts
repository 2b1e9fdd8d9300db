import { countAll } from './count-all';
import { CUTS, cutRecord } from './cut-record';
import type { Estimator, Posterior } from './estimator';
import { type FitOptions, fitSettings } from './fit-settings';
import { stratifiedFolds } from './folds';
import type { CodedFinding, CodedRecord, Layout } from './layout';
import { createPlainEstimator } from './plain-naive-bayes';
import { createScoreBoard, type Scores } from './score-board';
import { type Brackets, createBracketBoard } from './bracket-board';
import { type Coverage, createCoverageBoard } from './coverage-board';
import { fitRecordDependence } from './record-dependence';
import { createEstimator } from './weighted-naive-bayes';

/** Exact probabilities per cause given findings (unlisted last) in the invented world of the records; null where it has none. */
export type TruthOf = (recordIndex: number, device: number, findings: readonly CodedFinding[]) => Float64Array | null;

export type RecordsOptions = {
  folds?: number;
  repeats?: number;
  seed?: number;
  fit?: FitOptions;
  /** Only this many folds of each repeat are scored; all by default. */
  foldsScored?: number;
  truth?: TruthOf;
  /** Held-out records of each fold that are held against the truth: intervals for all estimators take their time. Default: all. */
  truthOn?: number;
  /** So many held-out records of each fold, and no others, are looked at, and by dependence-aware estimators, too, which are slow. */
  compareOn?: number;
  /** Told at the start, and after every fold that was scored. */
  onProgress?: (done: number, of: number) => void;
};

export type EstimatorScores = { estimator: string; excessLogLoss: number | null; coverage: Coverage | null } & Scores;

/** Scores of one group of records, of the default estimator before the first fix. */
export type GroupScores = { group: number; count: number; accuracy: number; logLoss: number };

export type RecordsEvaluation = {
  records: number;
  folds: number;
  repeats: number;
  /** Per cut: the default estimator first, then plain naive Bayes, then the bare prior. */
  cuts: { cut: (typeof CUTS)[number]; results: EstimatorScores[] }[];
  byDevice: GroupScores[];
  byCause: GroupScores[];
  /** Stated chances and brackets of the default estimator before the first fix; null where nothing was scored. */
  brackets: Brackets | null;
};

/** Without `posterior` it gives no intervals, and is not held against a known truth. */
type Contender = {
  name: string;
  estimator: Pick<Estimator, 'probabilities'> & Partial<Pick<Estimator, 'posterior'>>;
  namesUnlisted: boolean;
};

/**
 * Cross-validation on the casebook: each record with a cause is predicted, as far as it was known at each cut, by
 * estimators refitted without its fold. A cause that no other record has counts as the unlisted one.
 */
export function evaluateRecords(
  layout: Layout,
  records: readonly CodedRecord[],
  options: RecordsOptions = {},
): RecordsEvaluation {
  const { folds = 10, repeats = 3, seed = 7 } = options;
  const cells = CUTS.map(() => new Map<string, ReturnType<typeof createCell>>());
  const byDevice = new Map<number, ReturnType<typeof createScoreBoard>>();
  const byCause = new Map<number, ReturnType<typeof createScoreBoard>>();
  const brackets = createBracketBoard();
  const scoredFolds = Math.min(folds, options.foldsScored ?? folds);
  options.onProgress?.(0, repeats * scoredFolds);
  for (let repeat = 0; repeat < repeats; repeat += 1) {
    const fold = stratifiedFolds(records, folds, seed + repeat);
    for (let held = 0; held < scoredFolds; held += 1) {
      const training = records.filter((_, i) => fold[i] !== held);
      const contenders = learnAll(layout, training, options);
      const known = new Set(training.flatMap((record) => record.causes));
      let looked = 0;
      records.forEach((record, index) => {
        if (fold[index] !== held || record.causes.length === 0) return;
        looked += 1;
        if (looked > (options.compareOn ?? Infinity)) return;
        const { findings, lengths } = cutRecord(layout, record);
        lengths.forEach((length, cut) => {
          const seen = findings.slice(0, length);
          const exact = looked > (options.truthOn ?? Infinity) ? null : (options.truth?.(index, record.device, seen) ?? null);
          const truth = exact === null ? null : withUnlisted(exact, known);
          contenders.forEach((contender, i) => {
            const isUsual = i === 0 && cut === 2;
            // Intervals take their time, so they are worked out only where they are looked at.
            const posterior = truth !== null || isUsual ? contender.estimator.posterior?.(record.device, seen) : undefined;
            const prediction = {
              probability: posterior?.probability ?? contender.estimator.probabilities(record.device, seen),
              target: targetOf(layout, contender, { record, known }),
            };
            const cell = cells[cut]?.get(contender.name) ?? createCell();
            cells[cut]?.set(contender.name, cell);
            cell.board.add(prediction);
            if (truth !== null && posterior !== undefined) cell.coverage.add(posterior, truth);
            if (isUsual && posterior !== undefined) {
              brackets.add(posterior, prediction.target);
              boardOf(byDevice, record.device).add(prediction);
              for (const cause of record.causes) boardOf(byCause, cause).add(prediction);
            }
          });
        });
      });
      options.onProgress?.(repeat * scoredFolds + held + 1, repeats * scoredFolds);
    }
  }
  return {
    records: records.length,
    folds,
    repeats,
    cuts: CUTS.map((cut, i) => ({ cut, results: [...(cells[i] as Map<string, ReturnType<typeof createCell>>)].map(report) })),
    byDevice: groupScores(byDevice),
    byCause: groupScores(byCause),
    brackets: brackets.brackets(),
  };
}

function createCell() {
  return { board: createScoreBoard(), coverage: createCoverageBoard() };
}

function report([estimator, cell]: [string, ReturnType<typeof createCell>]): EstimatorScores {
  const coverage = cell.coverage.coverage();
  return { estimator, ...cell.board.scores(), excessLogLoss: coverage?.excessLogLoss ?? null, coverage };
}

function learnAll(layout: Layout, training: readonly CodedRecord[], { fit = {}, compareOn }: RecordsOptions): Contender[] {
  const counts = countAll(layout, training);
  const settings = fitSettings(layout, training, fit);
  const weighted = createEstimator(layout, counts, settings);
  const plain = createPlainEstimator(layout, counts);
  const dependent = compareOn === undefined ? [] : fitRecordDependence(layout, training, weighted);
  const priorOnly = (device: number) => weighted.prior(device);
  const priorIntervals = new Map<number, Posterior>();
  const priorPosterior = (device: number) => {
    const found = priorIntervals.get(device) ?? weighted.posterior(device, []);
    priorIntervals.set(device, found);
    return found;
  };
  return [
    { name: weighted.name, estimator: weighted, namesUnlisted: true },
    { name: plain.name, estimator: plain, namesUnlisted: false },
    {
      name: 'prior',
      estimator: { probabilities: priorOnly, posterior: priorPosterior },
      namesUnlisted: true,
    },
    ...dependent.map(({ name, probabilities }) => ({ name, estimator: { probabilities }, namesUnlisted: true })),
  ];
}

/** The record's causes as shares of 1; to who knows of an unlisted cause, one that no training record has is that one. */
function targetOf(layout: Layout, { namesUnlisted }: Contender, { record, known }: { record: CodedRecord; known: ReadonlySet<number> }) {
  return record.causes.map((cause) => ({
    cause: namesUnlisted && !known.has(cause) ? layout.causeCount : cause,
    share: 1 / record.causes.length,
  }));
}

/** A cause that none of the training records has is unlisted to the estimators, so its probability belongs there. */
function withUnlisted(exact: Float64Array, known: ReadonlySet<number>): Float64Array {
  const truth = Float64Array.from(exact);
  const unlisted = truth.length - 1;
  exact.forEach((p, cause) => {
    if (cause === unlisted || known.has(cause)) return;
    truth[cause] = 0;
    truth[unlisted] = (truth[unlisted] as number) + p;
  });
  return truth;
}

function boardOf(boards: Map<number, ReturnType<typeof createScoreBoard>>, group: number) {
  const board = boards.get(group) ?? createScoreBoard();
  boards.set(group, board);
  return board;
}

function groupScores(boards: ReadonlyMap<number, ReturnType<typeof createScoreBoard>>): GroupScores[] {
  return [...boards]
    .map(([group, board]) => {
      const { count, accuracy, logLoss } = board.scores();
      return { group, count, accuracy, logLoss };
    })
    .sort((a, b) => b.count - a.count || a.group - b.group);
}
