import { addRecord, type Counts, retractRecord } from './counts';
import { cutRecord } from './cut-record';
import type { AdditiveEstimator } from './estimator';
import type { CodedQuery } from './explain';
import type { CodedRecord } from './layout';
import { logSumExp } from './score';
import { createEstimator } from './weighted-naive-bayes';

/** One probability that moves: `cause` may be the unlisted one (causeCount). */
export type Shift = { cause: number; before: number; after: number };

/**
 * What one more record would do to the answers of some questions, settings held fixed: per question the causes whose
 * probability moves, largest move first. The counts are left as they were, bit for bit, their revision included: what an
 * estimator keeps of them still holds.
 *
 * @param estimator over these very counts; what it keeps is used.
 */
export function influence(
  counts: Counts,
  estimator: AdditiveEstimator,
  { record, queries, leastShift = 1e-4 }: { record: CodedRecord; queries: readonly CodedQuery[]; leastShift?: number },
): Shift[][] {
  const answers = (from: AdditiveEstimator) => queries.map(({ device, findings }) => from.probabilities(device, findings));
  const before = answers(estimator);
  const { revision } = counts;
  addRecord(counts, record);
  let after: Float64Array[];
  try {
    // A new one: the one given must not see the counts as they are for this moment.
    after = answers(createEstimator(estimator.layout, counts, estimator.settings));
  } finally {
    retractRecord(counts, record);
    counts.revision = revision;
  }
  return before.map((old, i) => {
    const now = after[i] as Float64Array;
    const shifts = Array.from(old, (p, cause) => ({ cause, before: p, after: now[cause] as number }));
    const size = (s: Shift) => Math.abs(s.after - s.before);
    return shifts.filter((s) => size(s) >= leastShift).sort((a, b) => size(b) - size(a));
  });
}

/**
 * How unlikely a record's findings are under its own stated cause, judged by the casebook without it. `bits` is the
 * weight of evidence against its cause, in favour of the average of all others, before the proof (0 or less: none);
 * `causeProbability` is what the casebook would have given its cause; `findings` weighs each finding alone, most
 * surprising first: minus log2 of its share under the cause, and under all causes by the prior.
 */
export type Surprise = {
  bits: number;
  causeProbability: number;
  findings: { observable: number; value: number; bits: number; usualBits: number }[];
};

/** Surprise of a record that is not in the estimator's counts. Returns null where its cause was not found. */
export function surprise(estimator: AdditiveEstimator, record: CodedRecord): Surprise | null {
  if (record.causes.length === 0) return null;
  const { layout } = estimator;
  const { findings } = cutRecord(layout, record);
  const evidence = estimator.evidence(record.device, findings);
  const prior = estimator.prior(record.device);
  const stated = record.causes.map((cause) => ((prior[cause] as number) > 0 ? cause : layout.causeCount));
  const isStated = (c: number) => stated.includes(c);
  const logPrior = prior.map(Math.log);
  const joint = estimator.logScores(record.device, findings);
  const pick = (of: Float64Array, keep: (c: number) => boolean) => logSumExp(of.map((x, c) => (keep(c) ? x : Number.NEGATIVE_INFINITY)));
  const own = pick(joint, isStated) - pick(logPrior, isStated);
  const others = pick(joint, (c) => !isStated(c)) - pick(logPrior, (c) => !isStated(c));
  const probability = estimator.probabilities(record.device, findings);
  return {
    bits: (others - own) / Math.LN2,
    causeProbability: stated.reduce((sum, c) => sum + (probability[c] as number), 0),
    findings: evidence
      .map(({ finding, logLikelihood }) => ({
        observable: finding.observable,
        value: finding.value,
        bits: -Math.max(...stated.map((c) => logLikelihood[c] as number)) / Math.LN2,
        usualBits: -logSumExp(logLikelihood.map((log, c) => log + (logPrior[c] as number))) / Math.LN2,
      }))
      .sort((a, b) => b.bits - b.usualBits - (a.bits - a.usualBits)),
  };
}
