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

/** Explains causes of one question; what the explanations have in common is worked out once. */
export type Explainer = {
  /** Finding by finding against one rival, without remainder. Either may be the unlisted cause. */
  against(cause: number, rival: number): ExplanationAgainst;
  /**
   * Against all others. Each finding's weight is its likelihood against the average over the rivals by their priors;
   * `interaction` is what the findings say jointly about the rivals beyond their product; `mixing` is what mixing in the
   * prior does to the odds, from its own formula.
   */
  againstAll(cause: number): ExplanationAgainstAll;
};

/** Makes an explainer of a question as the estimator sees it now. */
export function createExplainer(estimator: AdditiveEstimator, query: CodedQuery): Explainer {
  const evidence = estimator.evidence(query.device, query.findings);
  const prior = estimator.prior(query.device);
  const scores = estimator.logScores(query.device, query.findings);
  const mixed: Mixed = { mixing: estimator.settings.mixing, scores, total: logSumExp(scores), prior, logPrior: prior.map(Math.log) };
  let shares: Float64Array[] | undefined;
  return {
    against(cause, rival) {
      const priorOdds = DECIBANS * (Math.log(prior[cause] as number) - Math.log(prior[rival] as number));
      const items = evidence.map(({ finding, logLikelihood, weight }) => ({
        observable: finding.observable,
        value: finding.value,
        weight: DECIBANS * weight * ((logLikelihood[cause] as number) - (logLikelihood[rival] as number)),
      }));
      const mixing = DECIBANS * (mixingShift(mixed, cause) - mixingShift(mixed, rival));
      return { prior: priorOdds, items, total: items.reduce((sum, item) => sum + item.weight, priorOdds), mixing };
    },
    againstAll(cause) {
      // Prior times likelihood of each cause, finding by finding.
      shares ??= evidence.map(({ logLikelihood, weight }) => prior.map((p, c) => (p === 0 ? 0 : p * Math.exp(weight * (logLikelihood[c] as number)))));
      const known = shares;
      const rivals = sumOfOthers(prior, cause);
      let product = 0;
      const items = evidence.map(({ finding, logLikelihood, weight }, i) => {
        const average = Math.log(sumOfOthers(known[i] as Float64Array, cause) / rivals);
        product += average;
        return {
          observable: finding.observable,
          value: finding.value,
          weight: DECIBANS * (weight * (logLikelihood[cause] as number) - average),
        };
      });
      const joint = logOfOthers(scores, mixed.total, cause) - Math.log(rivals);
      const interaction = DECIBANS * (product - joint);
      const mixing = DECIBANS * mixingOddsShift(mixed, cause);
      const priorOdds = DECIBANS * (Math.log(prior[cause] as number) - Math.log(rivals));
      const total = items.reduce((sum, item) => sum + item.weight, priorOdds + interaction + mixing);
      return { prior: priorOdds, items, interaction, mixing, total };
    },
  };
}

/** Explains `cause` against `rival`; see `Explainer`. */
export function explainAgainst(estimator: AdditiveEstimator, query: CodedQuery, cause: number, rival: number): ExplanationAgainst {
  return createExplainer(estimator, query).against(cause, rival);
}

/** Explains `cause` against all others; see `Explainer`. */
export function explainAgainstAll(estimator: AdditiveEstimator, query: CodedQuery, cause: number): ExplanationAgainstAll {
  return createExplainer(estimator, query).againstAll(cause);
}

function sumOfOthers(values: Float64Array, cause: number): number {
  let sum = 0;
  for (let c = 0; c < values.length; c += 1) if (c !== cause) sum += values[c] as number;
  return sum;
}

/** Logarithm of the sum of exponentials but for one, from that of all; added up anew where the difference would lose digits. */
function logOfOthers(logs: Float64Array, total: number, without: number): number {
  const share = Math.exp((logs[without] as number) - total);
  return share > 0.5 ? logSumExp(logs, without) : total + Math.log1p(-share);
}

type Mixed = { mixing: number; scores: Float64Array; total: number; prior: Float64Array; logPrior: Float64Array };

/** log of mixed over unmixed probability of one cause, less log(1 - mixing). */
function mixingShift({ mixing, scores, total, logPrior }: Mixed, cause: number): number {
  if (mixing === 0) return 0;
  return Math.log1p(Math.exp(Math.log(mixing / (1 - mixing)) + (logPrior[cause] as number) - ((scores[cause] as number) - total)));
}

/** How mixing changes the log odds of a cause against all others: its own shift less that of the others' sum. */
function mixingOddsShift(mixed: Mixed, cause: number): number {
  const { mixing, scores, total, logPrior } = mixed;
  if (mixing === 0) return 0;
  const others = logOfOthers(scores, total, cause) - total;
  const logRatio = Math.log(mixing / (1 - mixing)) + logOfOthers(logPrior, 0, cause) - others;
  return mixingShift(mixed, cause) - Math.log1p(Math.exp(logRatio));
}

/** Index of the strongest rival: the most probable other cause, the unlisted one included. */
export function strongestRival(probability: ArrayLike<number>, cause: number): number {
  let rival = cause === 0 ? 1 : 0;
  for (let c = 0; c < probability.length; c += 1) {
    if (c !== cause && (probability[c] as number) > (probability[rival] as number)) rival = c;
  }
  return rival;
}
