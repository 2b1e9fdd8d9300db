import type { CodedFinding, Layout } from './layout';
import type { Settings } from './settings';

/** Per cause, unlisted last: the estimate and its 90 % interval. */
export type Posterior = { probability: Float64Array; low: Float64Array; high: Float64Array };

/** `table[c * K + v]` is P(v | c, device), c up to and with the unlisted cause; `weight` is its exponent. */
export type OutcomeTable = { table: Float64Array; weight: number };

/**
 * What every estimator offers. Per-cause arrays have length causeCount + 1; the last entry is the unlisted cause.
 * Findings may come in any order; the same finding twice counts once; what is not among them changes nothing.
 */
export interface Estimator {
  readonly name: string;
  readonly layout: Layout;
  readonly settings: Settings;
  /** P(cause | device); sums to 1. */
  prior(device: number): Float64Array;
  /** Natural logs of prior times weighted likelihood, not normalised, before the prior is mixed in. */
  logScores(device: number, findings: readonly CodedFinding[]): Float64Array;
  /** P(cause | findings, device), mixed with the prior; sums to 1. Quick: no intervals. */
  probabilities(device: number, findings: readonly CodedFinding[]): Float64Array;
  /** The same with 90 % intervals. */
  posterior(device: number, findings: readonly CodedFinding[]): Posterior;
  /** What an observable would show, on a unit of which these findings are known. */
  outcomeTable(device: number, observable: number, findings?: readonly CodedFinding[]): OutcomeTable;
}

/** An estimator whose evidence adds up finding by finding, so that it can be explained without remainder. */
export interface AdditiveEstimator extends Estimator {
  /** One term per finding, in order, duplicates dropped: scores are log prior plus weight times log likelihood. */
  evidence(device: number, findings: readonly CodedFinding[]): { finding: CodedFinding; logLikelihood: Float64Array; weight: number }[];
  /** Makes what the answers to these findings read of the counts, a table a step, and nothing of the answers. They are the same without it. */
  prepare(device: number, findings: readonly CodedFinding[]): Generator<void, void>;
}
