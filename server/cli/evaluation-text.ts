import type { evaluateCasebook } from '../casebook/evaluate-casebook';
import { cell, table } from './text-table';

type Scored = { estimator: string; accuracy: number; top3: number; logLoss: number; brier: number; ece: number };
type CasebookEvaluation = Awaited<ReturnType<typeof evaluateCasebook>>;
type Group = { label: string; count: number; accuracy: number; logLoss: number };

/** Scores of the estimators as a table for the terminal; log loss in nats, shares 0 to 1. */
export function scoresText(heading: string, results: readonly Scored[]): string {
  const rows = results.map((r) => [r.estimator, ...[r.accuracy, r.top3, r.logLoss, r.brier, r.ece].map(cell)]);
  return table(heading, [['', 'accuracy', 'top 3', 'log loss', 'Brier', 'ECE'], ...rows]);
}

/** An evaluation of the casebook in full: per moment, stated chances against what was, per device and per cause. */
export function casebookText(result: CasebookEvaluation): string {
  const { rows, folds, repeats, fitRecords, cuts, brackets, knownTruth, byDevice, byCause } = result;
  return [
    `${rows} cases, ${folds} parts, ${repeats === 1 ? 'once' : `${repeats} times`} over; settings fitted in each on at most ${fitRecords} of the other cases.\n`,
    ...cuts.map(({ cut, results }) => scoresText(`What was known: ${cut}`, results)),
    bracketsText(brackets),
    ...(knownTruth?.cuts ?? []).map(truthText),
    groupsText('By device, before the first fix', byDevice),
    groupsText('By cause, before the first fix', byCause),
  ].join('\n');
}

function bracketsText(brackets: CasebookEvaluation['brackets']): string {
  if (brackets === null) return '';
  const heading =
    `Stated chances of at least 0.01 before the first fix: ${brackets.pairs}; ` +
    `share in bins whose bracket holds what was: ${cell(brackets.held)}; mean width of a bracket: ${cell(brackets.width)}`;
  const rows = brackets.bins
    .filter(({ count }) => count > 0)
    .map((bin) => [
      `${bin.low.toFixed(1)}-${bin.high.toFixed(1)}`,
      String(bin.count),
      ...[bin.stated, bin.bracketLow, bin.bracketHigh, bin.observed].map(cell),
    ]);
  return table(heading, [['chance', 'pairs', 'stated', 'from', 'to', 'observed'], ...rows]);
}

function truthText({ cut, results }: NonNullable<CasebookEvaluation['knownTruth']>['cuts'][number]): string {
  const rows = results.map((r) => [r.estimator, ...[r.excessLogLoss, r.covered, r.width].map(cell)]);
  return table(`Against the exact probabilities: ${cut}`, [['', 'excess log loss', 'intervals hold', 'mean width'], ...rows]);
}

function groupsText(heading: string, groups: readonly Group[]): string {
  const rows = groups.map(({ label, count, accuracy, logLoss }) => [label, String(count), cell(accuracy), cell(logLoss)]);
  return table(heading, [['', 'cases', 'accuracy', 'log loss'], ...rows]);
}
