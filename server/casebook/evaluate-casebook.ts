import type { PrismaClient } from '../../prisma/generated/client';
import { AppError } from '../../shared/errors';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { type Coding, decodeFinding } from '../../shared/domain/coding/coding';
import type { EvaluationView, RepairSummary } from '../../shared/schemas/evaluation';
import { evaluateRecords, type RecordsEvaluation, type TruthOf } from '../../shared/stats/evaluate-records';
import type { KnownWorld } from './known-world';
import { saveEvaluation } from '../repositories/evaluation-repository';
import { loadCasebook } from './load-casebook';

export type EvaluateOptions = {
  folds: number;
  /** How often the cases are split. Default: `usualRepeats`. */
  repeats?: number;
  seed: number;
  /** Told at the start, and after every fold. */
  onProgress?: (done: number, of: number) => void;
  /** Looks at so many cases of each part only, and compares estimators that look at how findings go together. */
  compareOn?: number;
  /** The invented world that the cases come from, and how many units to simulate; 0 for none. */
  known?: { world: KnownWorld; units: number; onUnit: (done: number) => void };
};

/** Fewest records with a cause that are worth splitting. */
const LEAST_RECORDS = 20;

/**
 * Most records that the fit looks at in each fold, drawn from its training part alone. The look-up's own fit looks at
 * up to three times as many; this bound keeps thirty fits short, and what it costs in accuracy has not been measured.
 */
const FIT_RECORDS = 500;

/**
 * How often so many cases are split: where there are few, which of them are held out together makes a difference; thousands
 * are predicted often enough in one round, and each round takes minutes.
 */
export function usualRepeats(cases: number): number {
  return cases < MANY_CASES ? 3 : 1;
}

const MANY_CASES = 1000;

/** Held-out cases of each fold that are held against the exact probabilities. */
const TRUTH_ON = 40;

/** What was known of a unit where nothing but checks, and no fix yet, had been done: the moment most look-ups are made. */
const USUAL_CUT = 'before the first fix';

/**
 * Cross-validates the estimators on the accepted cases and keeps the result as the latest evaluation. `results` repeats
 * the scores before the first fix, in the form that a table's evaluation has. Refuses a casebook of fewer than 20 cases.
 */
export async function evaluateCasebook(
  db: PrismaClient,
  { folds, repeats: asked, seed, onProgress, compareOn, known }: EvaluateOptions,
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
  const repeats = asked ?? usualRepeats(resolved.length);
  const evaluation = evaluateRecords(coding.layout, records, {
    folds,
    repeats,
    seed,
    fit: { maxRecords: FIT_RECORDS },
    onProgress,
    ...(compareOn !== undefined && { compareOn }),
    ...(known && { truth: truthIn(known.world, coding), truthOn: TRUTH_ON }),
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
    knownTruth: known === undefined ? null : { cuts: knownCuts(evaluation), repairs: simulated(model, seed, known) },
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

/** Exact probabilities by coded findings; null where the world has no such board or the findings are impossible in it. */
function truthIn(world: KnownWorld, coding: Coding): TruthOf {
  return (_, device, findings) => {
    const stated = findings.map((finding) => decodeFinding(coding, finding));
    const exact = world.truePosterior(coding.devices[device]?.slug ?? '', stated);
    return exact === null ? null : Float64Array.from([...coding.causes, ''], (cause) => exact.get(cause) ?? 0);
  };
}

function knownCuts({ cuts }: RecordsEvaluation): NonNullable<EvaluationView['knownTruth']>['cuts'] {
  return cuts.map(({ cut, results }) => ({
    cut,
    results: results.flatMap(({ estimator, excessLogLoss, coverage }) =>
      excessLogLoss === null || coverage === null
        ? []
        : [{ estimator, excessLogLoss, covered: coverage.covered, width: coverage.meanWidth }],
    ),
  }));
}

function simulated(model: CasebookModel, seed: number, { world, units, onUnit }: NonNullable<EvaluateOptions['known']>): RepairSummary | null {
  return units === 0 ? null : world.simulateRepairs(model, { units, seed: String(seed), onProgress: onUnit });
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
