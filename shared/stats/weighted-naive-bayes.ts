import { boardsByPart, type CausePrior, causePrior } from './cause-prior';
import type { Counts } from './counts';
import type { AdditiveEstimator } from './estimator';
import { distinctFindings } from './findings';
import { type CodedFinding, type Layout, SYMPTOM } from './layout';
import { type LogMoments, logShareMoments } from './log-share-moments';
import { posteriorInterval } from './posterior-interval';
import { mixIn, normaliseLogScores, scoreFindings } from './score';
import type { Settings } from './settings';
import { presentSymptoms, symptomFactor } from './symptom-damping';
import { unitState } from './unit-state';
import { createValueShares } from './value-shares';

/**
 * Weighted, shrunken naive Bayes: P(c | x) proportional to P(c | device) times the product of P(v | c, device)^w, with
 * shares pooled along the device path and over shared parts, and a little of the prior mixed in. What a check shows hangs on
 * the cause and on the unit's state by its symptoms, and symptoms count less the more of them there are: the evidence still adds up finding by finding. Reads the counts as
 * they are when asked; results are kept per device until the counts change.
 */
export function createEstimator(layout: Layout, counts: Counts, settings: Settings): AdditiveEstimator {
  const sharesOf = createValueShares(counts, settings);
  const priorOf = createPriors(counts, settings);
  const weightOf = (observable: number) => settings.weights[observable] as number;
  /** Exponents of distinct findings, as they count together. */
  const weightsAmong = (distinct: readonly CodedFinding[]) => {
    const damped = symptomFactor(presentSymptoms(layout, distinct), settings.symptomDamping);
    return (observable: number) => weightOf(observable) * (layout.kinds[observable] === SYMPTOM ? damped : 1);
  };

  const evidence: AdditiveEstimator['evidence'] = (device, findings) => {
    const state = unitState(layout, findings);
    const distinct = distinctFindings(layout, findings);
    const weightHere = weightsAmong(distinct);
    return distinct.map((finding) => ({
      finding,
      logLikelihood: sharesOf({ device, state, observable: finding.observable, value: finding.value }).logs(),
      weight: weightHere(finding.observable),
    }));
  };
  const logScores = (device: number, findings: readonly CodedFinding[]) =>
    scoreFindings({ logPrior: priorOf(device).log, findings: evidence(device, findings) });
  const probabilities = (device: number, findings: readonly CodedFinding[]) =>
    mixIn(normaliseLogScores(logScores(device, findings)), priorOf(device).probability, settings.mixing);

  return {
    name: 'weighted naive Bayes',
    layout,
    settings,
    prior: (device) => Float64Array.from(priorOf(device).probability),
    logScores,
    probabilities,
    evidence,
    *prepare(device, findings) {
      priorOf(device);
      const state = unitState(layout, findings);
      for (const { observable, value } of distinctFindings(layout, findings)) {
        yield;
        const shares = sharesOf({ device, state, observable, value });
        shares.logs();
        shares.moments();
      }
    },
    outcomeTable: (device, observable, findings = []) => ({
      table: sharesOf({ device, state: unitState(layout, findings), observable }).share,
      weight: weightOf(observable),
    }),
    posterior: (device, findings) => {
      const distinct = distinctFindings(layout, findings);
      const state = unitState(layout, distinct);
      const weightHere = weightsAmong(distinct);
      const terms = distinct.map((finding) => {
        const { variance, third } = sharesOf({ device, state, ...finding }).moments();
        return { variance, third, weight: weightHere(finding.observable) };
      });
      const scores = logScores(device, distinct);
      const prior = priorOf(device);
      const probability = mixIn(normaliseLogScores(scores), prior.probability, settings.mixing);
      return { probability, ...posteriorInterval({ scores, probability, prior, terms, settings, records: counts.records[0] as number }) };
    },
  };
}

type LoggedPrior = CausePrior & { log: Float64Array; moments: LogMoments };

function createPriors(counts: Counts, settings: Settings): (device: number) => LoggedPrior {
  const boards = boardsByPart(counts.layout);
  const known = new Map<number, LoggedPrior>();
  let revision = counts.revision;
  return (device) => {
    if (revision !== counts.revision) {
      known.clear();
      revision = counts.revision;
    }
    let prior = known.get(device);
    if (prior === undefined) {
      const computed = causePrior(counts, settings, boards, device);
      const moments = logShareMoments(computed.probability, computed.worth);
      prior = { ...computed, log: computed.probability.map(Math.log), moments };
      known.set(device, prior);
    }
    return prior;
  };
}
