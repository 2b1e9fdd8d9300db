import type { PrismaClient } from '../../prisma/generated/client';
import { AppError } from '../../shared/errors';
import { evaluateRecords, type RecordsEvaluation } from '../../shared/stats/evaluate-records';
import { saveEvaluation } from '../repositories/evaluation-repository';
import { loadCasebook } from './load-casebook';

export type EvaluateOptions = {
  folds: number;
  repeats: number;
  seed: number;
  /** Told after every fold. */
  onProgress?: (done: number, of: number) => void;
};

/** Fewest records with a cause that are worth splitting. */
const LEAST_RECORDS = 20;

/**
 * Most records that the fit looks at in each fold, drawn from its training part alone. The look-up's own fit looks at
 * up to three times as many; this bound keeps thirty fits short, and what it costs in accuracy has not been measured.
 */
const FIT_RECORDS = 500;

/** What was known of a unit where nothing but checks, and no fix yet, had been done: the moment most look-ups are made. */
const USUAL_CUT = 'before the first fix';

/**
 * Cross-validates the estimators on the accepted cases and keeps the result as the latest evaluation. `results` repeats
 * the scores before the first fix, in the form that a table's evaluation has. Refuses a casebook of fewer than 20 cases.
 */
export async function evaluateCasebook(
  db: PrismaClient,
  { folds, repeats, seed, onProgress }: EvaluateOptions,
  { now, newId }: { now: Date; newId: () => string },
) {
  const { model } = await loadCasebook(db);
  const { coding } = model;
  const records = [...model.entries.values()].sort((a, b) => (a.id < b.id ? -1 : 1)).map((entry) => entry.coded);
  const resolved = records.filter((record) => record.causes.length > 0);
  if (resolved.length < Math.max(LEAST_RECORDS, folds)) {
    throw new AppError('too-few-cases', {
      detail: `It has ${resolved.length} cases with a cause; at least ${Math.max(LEAST_RECORDS, folds)} are needed.`,
    });
  }
  const evaluation = evaluateRecords(coding.layout, records, {
    folds,
    repeats,
    seed,
    fit: { maxRecords: FIT_RECORDS },
    onProgress,
  });
  const result = {
    rows: evaluation.records,
    causes: new Set(resolved.flatMap((record) => record.causes)).size,
    folds,
    repeats,
    seed,
    results: usualScores(evaluation),
    fitRecords: FIT_RECORDS,
    cuts: evaluation.cuts,
    brackets: evaluation.brackets,
    byDevice: evaluation.byDevice.map(({ group, ...scores }) => ({
      device: coding.devices[group]?.slug ?? '',
      label: model.words.devices.get(coding.devices[group]?.slug ?? '')?.label ?? '',
      ...scores,
    })),
    byCause: evaluation.byCause.map(({ group, ...scores }) => ({
      cause: coding.causes[group] ?? '',
      label: model.words.causes.get(coding.causes[group] ?? '')?.label ?? '',
      ...scores,
    })),
  };
  await saveEvaluation(db, { id: newId(), at: now, document: JSON.stringify(result), recordCount: records.length });
  return result;
}

function usualScores({ cuts }: RecordsEvaluation) {
  const usual = cuts.find(({ cut }) => cut === USUAL_CUT) ?? cuts[0];
  return (usual?.results ?? []).map(({ estimator, accuracy, top3, logLoss, brier, ece }) => ({
    estimator,
    accuracy,
    top3,
    logLoss,
    brier,
    ece,
  }));
}
