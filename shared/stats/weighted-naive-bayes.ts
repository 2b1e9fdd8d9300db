import { boardsByPart, type CausePrior, causePrior } from './cause-prior';
import type { Counts } from './counts';
import type { AdditiveEstimator } from './estimator';
import { distinctFindings } from './findings';
import type { CodedFinding, Layout } from './layout';
import { posteriorInterval } from './posterior-interval';
import { mixIn, normaliseLogScores, scoreFindings } from './score';
import type { Settings } from './settings';
import { createValueTables } from './value-tables';

/**
 * Weighted, shrunken naive Bayes: P(c | x) proportional to P(c | device) times the product of P(v | c, device)^w, with
 * shares pooled along the device path and over shared parts, and a little of the prior mixed in. Reads the counts as
 * they are when asked; results are kept per device until the counts change.
 */
export function createEstimator(layout: Layout, counts: Counts, settings: Settings): AdditiveEstimator {
  const tables = createValueTables(counts, settings);
  const priorOf = createPriors(counts, settings);
  const column = createColumns(counts, tables);
  const weightOf = (observable: number) => settings.weights[observable] as number;

  const evidence: AdditiveEstimator['evidence'] = (device, findings) =>
    distinctFindings(layout, findings).map((finding) => ({
      finding,
      logLikelihood: column(device, finding),
      weight: weightOf(finding.observable),
    }));
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
    outcomeTable: (device, observable) => ({ table: tables(device, observable).share, weight: weightOf(observable) }),
    posterior: (device, findings) => {
      const distinct = distinctFindings(layout, findings);
      const terms = distinct.map((finding) => {
        const { share, worth } = tables(device, finding.observable);
        return { share, worth, value: finding.value, weight: weightOf(finding.observable) };
      });
      const probability = probabilities(device, distinct);
      return {
        probability,
        ...posteriorInterval({ scores: logScores(device, distinct), probability, prior: priorOf(device), terms, settings }),
      };
    },
  };
}

type LoggedPrior = CausePrior & { log: Float64Array };

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
      prior = { ...computed, log: computed.probability.map(Math.log) };
      known.set(device, prior);
    }
    return prior;
  };
}

/** Columns of log likelihoods by device and finding, kept until the counts change. */
function createColumns(counts: Counts, tables: ReturnType<typeof createValueTables>) {
  const { layout } = counts;
  const known = new Map<number, Float64Array>();
  let revision = counts.revision;
  return (device: number, { observable, value }: CodedFinding): Float64Array => {
    if (revision !== counts.revision) {
      known.clear();
      revision = counts.revision;
    }
    const flat = (layout.valueStarts[observable] as number) + value;
    const key = flat * layout.deviceParents.length + device;
    let column = known.get(key);
    if (column === undefined) {
      const K = layout.valueCounts[observable] as number;
      const { share } = tables(device, observable);
      column = new Float64Array(layout.causeCount + 1);
      for (let c = 0; c <= layout.causeCount; c += 1) column[c] = Math.log(share[c * K + value] as number);
      known.set(key, column);
    }
    return column;
  };
}
