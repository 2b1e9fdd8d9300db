import { addRecord, type Counts, retractRecord } from './counts';
import { cutRecord } from './cut-record';
import type { AdditiveEstimator } from './estimator';
import { distinctFindings } from './findings';
import type { CodedRecord, Layout } from './layout';
import { presentSymptoms } from './symptom-damping';

/**
 * One record as the others see it: log likelihood columns of its findings (`columns[i * (C + 1) + c]`), log prior, and
 * its causes as shares of 1, where a cause that no other record has is the unlisted one.
 */
export type HeldOut = {
  observables: Int32Array;
  columns: Float32Array;
  logPrior: Float32Array;
  /** Symptoms that are present among the findings; all of them are there at the first cut. */
  present: number;
  target: { cause: number; share: number }[];
  /** Distinct numbers of leading findings at which to score; each counts 1/cuts.length. */
  cuts: number[];
};

/** Shares of a record's causes, judged by the other records (its own taken out of the counts already). */
export function heldOutTarget(counts: Counts, record: CodedRecord, unlisted: boolean): { cause: number; share: number }[] {
  return record.causes.map((cause) => ({
    cause: unlisted && counts.causeRecords[cause] === 0 ? counts.layout.causeCount : cause,
    share: 1 / record.causes.length,
  }));
}

/** Scores each record with its own counts taken out, exactly. The counts are left as they were. */
export function leaveOneOut(
  layout: Layout,
  { counts, estimator, records }: { counts: Counts; estimator: AdditiveEstimator; records: readonly CodedRecord[] },
): HeldOut[] {
  return records.map((record) => {
    const { findings, lengths } = cutRecord(layout, record);
    const distinct = distinctFindings(layout, findings);
    const cuts = [...new Set(lengths.map((n) => distinctFindings(layout, findings.slice(0, n)).length))];
    retractRecord(counts, record);
    try {
      const evidence = estimator.evidence(record.device, distinct);
      const width = layout.causeCount + 1;
      const columns = new Float32Array(evidence.length * width);
      evidence.forEach(({ logLikelihood }, i) => {
        // Not by `set`, which is many times slower from 64 to 32 bits.
        for (let c = 0, at = i * width; c < width; c += 1, at += 1) columns[at] = logLikelihood[c] as number;
      });
      return {
        observables: Int32Array.from(evidence, ({ finding }) => finding.observable),
        columns,
        present: presentSymptoms(layout, distinct),
        logPrior: Float32Array.from(estimator.prior(record.device), Math.log),
        target: heldOutTarget(counts, record, estimator.settings.unlisted),
        cuts,
      };
    } finally {
      addRecord(counts, record);
    }
  });
}
