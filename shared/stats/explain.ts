import type { AdditiveEstimator } from './estimator';
import type { CodedFinding } from './layout';
import { logSumExp } from './score';

/** Decibans per nat: weight of evidence is 10 log10 of an odds ratio (I. J. Good 1950). */
const DECIBANS = 10 / Math.LN10;

export type CodedQuery = { device: number; findings: readonly CodedFinding[] };

/** What one finding weighs, in decibans. */
export type EvidenceItem = CodedFinding & { weight: number };

/**
 * Evidence for a cause against one rival: `total` = `prior` + the items' weights is the log odds before the prior was
 * mixed in; `total` + `mixing` is the log odds of the probabilities that are shown. All in decibans.
 */
export type ExplanationAgainst = { prior: number; items: EvidenceItem[]; total: number; mixing: number };

/** Evidence for a cause against all others together: `total`, the log odds shown, is the sum of everything else. */
export type ExplanationAgainstAll = { prior: number; items: EvidenceItem[]; interaction: number; mixing: number; total: number };

/** Explains `cause` against `rival` finding by finding, without remainder. Either may be the unlisted cause. */
export function explainAgainst(estimator: AdditiveEstimator, query: CodedQuery, cause: number, rival: number): ExplanationAgainst {
  const evidence = estimator.evidence(query.device, query.findings);
  const prior = estimator.prior(query.device);
  const priorOdds = DECIBANS * (Math.log(prior[cause] as number) - Math.log(prior[rival] as number));
  const items = evidence.map(({ finding, logLikelihood, weight }) => ({
    observable: finding.observable,
    value: finding.value,
    weight: DECIBANS * weight * ((logLikelihood[cause] as number) - (logLikelihood[rival] as number)),
  }));
  const scores = estimator.logScores(query.device, query.findings);
  const mixing =
    DECIBANS * (mixingShift(estimator, { scores, prior, cause }) - mixingShift(estimator, { scores, prior, cause: rival }));
  return { prior: priorOdds, items, total: items.reduce((sum, item) => sum + item.weight, priorOdds), mixing };
}

/**
 * Explains `cause` against all others. Each finding's weight is its likelihood against the average over the rivals by
 * their priors; `interaction` is what the findings say jointly about the rivals beyond their product; `mixing` is what
 * mixing in the prior does to the odds, from its own formula.
 */
export function explainAgainstAll(estimator: AdditiveEstimator, query: CodedQuery, cause: number): ExplanationAgainstAll {
  const evidence = estimator.evidence(query.device, query.findings);
  const prior = estimator.prior(query.device);
  const logPrior = prior.map(Math.log);
  const logRivals = logOfRivals(logPrior, cause);
  const joint = logRivals.slice();
  let product = 0;
  const items = evidence.map(({ finding, logLikelihood, weight }) => {
    const rivals = logSumExp(logRivals.map((share, r) => (share === Number.NEGATIVE_INFINITY ? share : share + weight * (logLikelihood[r] as number))));
    logLikelihood.forEach((log, r) => {
      joint[r] = (joint[r] as number) + weight * log;
    });
    product += rivals;
    return {
      observable: finding.observable,
      value: finding.value,
      weight: DECIBANS * (weight * (logLikelihood[cause] as number) - rivals),
    };
  });
  const interaction = DECIBANS * (product - logSumExp(joint));
  const scores = estimator.logScores(query.device, query.findings);
  const mixing = DECIBANS * mixingOddsShift(estimator, { scores, prior, cause });
  const priorOdds = DECIBANS * ((logPrior[cause] as number) - logSumExp(logPrior.map((log, r) => (r === cause ? Number.NEGATIVE_INFINITY : log))));
  const total = items.reduce((sum, item) => sum + item.weight, priorOdds + interaction + mixing);
  return { prior: priorOdds, items, interaction, mixing, total };
}

/** Logs of the rivals' priors, scaled to sum to 1 among themselves; the cause itself is left out. */
function logOfRivals(logPrior: Float64Array, cause: number): Float64Array {
  const others = logPrior.map((log, r) => (r === cause ? Number.NEGATIVE_INFINITY : log));
  const total = logSumExp(others);
  return others.map((log) => log - total);
}

type Mixed = { scores: Float64Array; prior: Float64Array; cause: number };

/** log of mixed over unmixed probability of one cause, less log(1 - mixing). */
function mixingShift(estimator: AdditiveEstimator, { scores, prior, cause }: Mixed): number {
  const { mixing } = estimator.settings;
  if (mixing === 0) return 0;
  const logRatio = Math.log(mixing / (1 - mixing)) + Math.log(prior[cause] as number) - ((scores[cause] as number) - logSumExp(scores));
  return Math.log1p(Math.exp(logRatio));
}

/** How mixing changes the log odds of a cause against all others: its own shift less that of the others' sum. */
function mixingOddsShift(estimator: AdditiveEstimator, mixed: Mixed): number {
  const { mixing } = estimator.settings;
  if (mixing === 0) return 0;
  const { scores, prior, cause } = mixed;
  const total = logSumExp(scores);
  const others = logSumExp(scores.map((score, r) => (r === cause ? Number.NEGATIVE_INFINITY : score))) - total;
  const priorOthers = logSumExp(prior.map((p, r) => (r === cause ? Number.NEGATIVE_INFINITY : Math.log(p))));
  const logRatio = Math.log(mixing / (1 - mixing)) + priorOthers - others;
  return mixingShift(estimator, mixed) - Math.log1p(Math.exp(logRatio));
}

/** Index of the strongest rival: the most probable other cause, the unlisted one included. */
export function strongestRival(probability: ArrayLike<number>, cause: number): number {
  let rival = cause === 0 ? 1 : 0;
  for (let c = 0; c < probability.length; c += 1) {
    if (c !== cause && (probability[c] as number) > (probability[rival] as number)) rival = c;
  }
  return rival;
}
