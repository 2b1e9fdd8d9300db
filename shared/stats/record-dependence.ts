import { aodeScores } from './aode';
import { logCauseShares, type Shrinkage } from './dependence-shares';
import { flatLayout } from './encode-table';
import type { Estimator } from './estimator';
import { distinctFindings } from './findings';
import { CUTS, cutRecord } from './cut-record';
import { fitShrinkage, SHRINKAGES } from './fit-shrinkage';
import type { CodedFinding, CodedRecord, Layout } from './layout';
import { createPairCounts, type PairCounts } from './pair-counts';
import { createRandom, shuffle } from './random';
import { temper } from './table-member';
import { tanScores } from './tan';
import { tanTree } from './tan-tree';

/** Counts by twos of the findings of one question alone, each as stated (value 1) or otherwise (0), and the findings so coded. */
type QuestionPairs = { counts: PairCounts; findings: CodedFinding[] };

/**
 * A casebook has too many causes, checks and outcomes for counts of all findings by twos. Those of one question are few, so they are
 * counted when it is asked: slow (a tenth of a second on thousands of records), and good for comparison.
 */
function questionPairs(layout: Layout, records: readonly CodedRecord[], asked: readonly CodedFinding[]): QuestionPairs {
  const findings = distinctFindings(layout, asked);
  const place = new Int32Array(layout.kinds.length).fill(-1);
  findings.forEach(({ observable }, i) => {
    place[observable] = i;
  });
  const narrowed = records.map((record) => ({
    ...record,
    findings: record.findings.flatMap((finding) => {
      const i = place[finding.observable] as number;
      return i < 0 ? [] : [{ ...finding, observable: i, value: finding.value === findings[i]?.value ? 1 : 0 }];
    }),
  }));
  const narrow = flatLayout(layout.causeCount, new Uint16Array(findings.length).fill(2));
  return { counts: createPairCounts(narrow, narrowed), findings: findings.map((_, observable) => ({ observable, value: 1 })) };
}

type Scores = (pairs: QuestionPairs, shrinkage: Shrinkage) => Float64Array;

const MEMBERS: Readonly<Record<string, Scores>> = {
  'shrunken AODE': ({ counts, findings }, shrinkage) => aodeScores(counts, findings, shrinkage),
  // The tree grows over the findings at hand: the same rule as for a table, on the observables that were looked at.
  'shrunken TAN': ({ counts, findings }, shrinkage) => tanScores(counts, findings, { parents: tanTree(counts), shrinkage }),
};

/** Records on which shrinkage and exponent are chosen. */
const TUNED_ON = 40;
const TUNED_AT = CUTS.indexOf('before the first fix');

export type DependenceContender = { name: string; probabilities: Estimator['probabilities'] };

/**
 * Averaged one-dependence and tree-augmented estimators over casebook records, for comparison. Shares are not pooled along the device
 * path, but the prior is: it is that of `pooled`, unlisted share included.
 */
export function fitRecordDependence(
  layout: Layout,
  records: readonly CodedRecord[],
  pooled: Pick<Estimator, 'prior'>,
): DependenceContender[] {
  const resolved = records.filter(({ causes }) => causes.length > 0);
  const sample = shuffle(resolved, createRandom(1)).slice(0, TUNED_ON);
  // Counts of one question take megabytes, so each record is scored under every shrinkage before the next is counted.
  const held = sample.map((record) => {
    const { findings, lengths } = cutRecord(layout, record);
    const others = resolved.filter((other) => other !== record);
    const pairs = questionPairs(layout, others, findings.slice(0, lengths[TUNED_AT]));
    const prior = pooled.prior(record.device);
    const underAll = (scoresOf: Scores) => new Map(SHRINKAGES.map((tried) => [keyOf(tried), withPrior(scoresOf(pairs, tried), pairs.counts, prior)]));
    return new Map(Object.entries(MEMBERS).map(([name, scoresOf]) => [name, underAll(scoresOf)]));
  });
  return Object.entries(MEMBERS).map(([name, scoresOf]) => {
    const heldOut = (tried: Shrinkage) => held.map((scores) => scores.get(name)?.get(keyOf(tried)) as Float64Array);
    const { shrinkage, temperature } = fitShrinkage(sample, heldOut);
    return {
      name,
      probabilities: (device, findings) => {
        const prior = pooled.prior(device);
        const pairs = questionPairs(layout, resolved, findings);
        const listed = temper(withPrior(scoresOf(pairs, shrinkage), pairs.counts, prior), temperature);
        const unlisted = prior.at(-1) as number;
        return Float64Array.from(prior, (_, cause) => (cause < listed.length ? (1 - unlisted) * (listed[cause] as number) : unlisted));
      },
    };
  });
}

const keyOf = ({ single, pair }: Shrinkage) => `${single} ${pair}`;

/** The device's prior in place of the share of each cause among all records. */
function withPrior(scores: Float64Array, counts: PairCounts, prior: Float64Array): Float64Array {
  const shares = logCauseShares(counts);
  return scores.map((score, cause) => score - (shares[cause] as number) + Math.log(Math.max(1e-12, prior[cause] as number)));
}
