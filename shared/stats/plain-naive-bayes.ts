import { COUNT_UNIT, type Counts } from './counts';
import type { AdditiveEstimator } from './estimator';
import { distinctFindings } from './findings';
import type { CodedFinding, Layout } from './layout';
import { normaliseLogScores, scoreFindings } from './score';
import { defaultSettings } from './settings';
import { readCells } from './sparse-rows';

/**
 * Plain naive Bayes with add-one smoothing of priors and shares, device and proof ignored, exponents 1, nothing mixed
 * in: the reference that the default estimator is measured against. The unlisted cause has probability 0, and the
 * interval is the estimate itself, as it claims no more.
 */
export function createPlainEstimator(layout: Layout, counts: Counts): AdditiveEstimator {
  const settings = { ...defaultSettings(layout), mixing: 0, unlisted: false };
  const prior = () => addOnePrior(counts);
  const evidence: AdditiveEstimator['evidence'] = (_device, findings) =>
    distinctFindings(layout, findings).map((finding) => ({ finding, logLikelihood: addOneColumn(counts, finding), weight: 1 }));
  const logScores = (device: number, findings: readonly CodedFinding[]) =>
    scoreFindings({ logPrior: prior().map(Math.log), findings: evidence(device, findings) });
  const probabilities = (device: number, findings: readonly CodedFinding[]) => normaliseLogScores(logScores(device, findings));
  return {
    name: 'naive Bayes',
    layout,
    settings,
    prior,
    evidence,
    // It keeps nothing.
    *prepare() {},
    logScores,
    probabilities,
    posterior: (device, findings) => {
      const probability = probabilities(device, findings);
      return { probability, low: probability.slice(), high: probability.slice() };
    },
    outcomeTable: (_device, observable) => {
      const K = layout.valueCounts[observable] as number;
      const table = new Float64Array((layout.causeCount + 1) * K);
      for (let value = 0; value < K; value += 1) {
        addOneColumn(counts, { observable, value }).forEach((log, c) => {
          table[c * K + value] = Math.exp(log);
        });
      }
      return { table, weight: 1 };
    },
  };
}

function addOnePrior(counts: Counts): Float64Array {
  const { layout } = counts;
  const total = (counts.resolvedWeights[0] as number) / COUNT_UNIT + layout.causeCount;
  const prior = new Float64Array(layout.causeCount + 1);
  for (let c = 0; c < layout.causeCount; c += 1) prior[c] = ((counts.causeWeights[c] as number) / COUNT_UNIT + 1) / total;
  return prior;
}

/** Logs of (n_cv + 1) / (n_c,observed + K), and of 1/K for the unlisted cause. */
function addOneColumn(counts: Counts, { observable, value }: CodedFinding): Float64Array {
  const { layout } = counts;
  const K = layout.valueCounts[observable] as number;
  const start = layout.valueStarts[observable] as number;
  const column = new Float64Array(layout.causeCount + 1).fill(-Math.log(K));
  const counted = new Float64Array(K);
  for (let c = 0; c < layout.causeCount; c += 1) {
    const row = counts.nodeRows.get(c);
    if (row === undefined) continue;
    counted.fill(0);
    readCells(counts.rows, row, { first: start, end: start + K, into: counted, sign: 1 });
    const observed = counted.reduce((sum, n) => sum + n, 0);
    column[c] = Math.log(((counted[value] as number) / COUNT_UNIT + 1) / (observed / COUNT_UNIT + K));
  }
  return column;
}
