import type { Estimator } from './estimator';
import { fitWeights, weightLoss } from './fit-weights';
import { stratifiedFolds } from './folds';
import type { HeldOut } from './leave-one-out';
import type { CodedFinding, CodedRecord, Layout } from './layout';
import { mixIn, normaliseLogScores } from './score';

/**
 * An estimator fitted to a plain table. `predict` gives a probability per cause (length causeCount; devices are not told
 * apart). `heldOut[i]` is what record i was given by a fit that had not seen it: natural logs, for choosing among members.
 */
export type TableMember = { name: string; predict(findings: readonly CodedFinding[]): Float64Array; heldOut: Float64Array[] };

/** Below this many records nothing is tuned: settings stay as they are. */
export const FEWEST_TO_TUNE = 20;
/** The exponent that findings which repeat each other usually deserve, and the records that this belief is worth. */
const USUAL_TEMPERATURE = 0.7;
const TEMPERATURE_RIDGE = 5;
/** Share of the prior mixed into every prediction, as the default settings have it. */
const MIXING = 0.002;
const LEAST_PROBABILITY = 1e-13;

/**
 * One exponent for held-out scores (not normalised), by penalised maximum likelihood.
 * @returns the exponent, and the log loss per record under it, in nats
 */
export function fitTemperature(
  scores: readonly Float64Array[],
  records: readonly CodedRecord[],
  { usual = USUAL_TEMPERATURE, ridge = TEMPERATURE_RIDGE } = {},
): { temperature: number; loss: number } {
  const heldOut = scores.map((score, i): HeldOut => {
    const { causes } = records[i] as CodedRecord;
    const top = score.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    return {
      observables: Int32Array.of(0),
      columns: Float32Array.from(score, (s) => s - top),
      logPrior: new Float32Array(score.length),
      present: 0,
      target: causes.map((cause) => ({ cause, share: 1 / causes.length })),
      cuts: [1],
    };
  });
  const problem = { heldOut, groupOf: [0], towards: Float64Array.of(usual), ridge };
  const exponent = fitWeights(problem);
  return { temperature: exponent[0] as number, loss: weightLoss(problem, exponent) / Math.max(1, records.length) };
}

/** Probabilities from scores under an exponent. */
export function temper(scores: Float64Array, temperature: number): Float64Array {
  return normaliseLogScores(scores.map((score) => score * temperature));
}

/** Natural logs, none below that of 10^-13. */
export function safeLog(probability: Float64Array): Float64Array {
  return probability.map((p) => Math.log(Math.max(LEAST_PROBABILITY, p)));
}

/** Part 0 to parts - 1 of each record, for a cross-validation inside the training records; always the same. */
export function innerFolds(records: readonly CodedRecord[], parts: number): Int32Array {
  return stratifiedFolds(records, Math.min(parts, records.length), 1);
}

/** A member behind the interface of estimators: the unlisted cause has probability 0, a little of the prior is mixed in. */
export function asEstimator(
  layout: Layout,
  records: readonly CodedRecord[],
  member: Pick<TableMember, 'predict'>,
): Pick<Estimator, 'probabilities'> {
  const prior = new Float64Array(layout.causeCount + 1).fill(1, 0, layout.causeCount);
  for (const { causes } of records) for (const cause of causes) prior[cause] = (prior[cause] as number) + 1 / causes.length;
  const total = prior.reduce((sum, n) => sum + n, 0);
  const shares = prior.map((n) => n / total);
  return {
    probabilities: (_device, findings) => {
      const probability = new Float64Array(layout.causeCount + 1);
      probability.set(member.predict(findings));
      return mixIn(probability, shares, MIXING);
    },
  };
}
