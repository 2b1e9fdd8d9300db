import type { CodedRecord, Layout } from './layout';
import { fitLogistic, type LogisticCoefficients, logisticScores } from './logistic';
import { FEWEST_TO_TUNE, innerFolds, safeLog, type TableMember, temper } from './table-member';

const PARTS = 5;
/** Strongest first, so that each fit can start where the one before it ended. */
const RIDGES = [3, 1, 0.3, 0.1];
const USUAL_RIDGE = 1;

/** Multinomial logistic regression, its ridge chosen by a five-fold cross-validation inside the records. */
export function fitLogisticMember(layout: Layout, records: readonly CodedRecord[]): TableMember {
  const ridges = records.length < FEWEST_TO_TUNE ? [USUAL_RIDGE] : RIDGES;
  const heldOut = ridges.map(() => [] as Float64Array[]);
  let path: LogisticCoefficients[] = [];
  const part = innerFolds(records, PARTS);
  for (let p = 0; p < PARTS; p += 1) {
    const training = records.filter((_, i) => part[i] !== p);
    path = [];
    ridges.forEach((ridge, r) => {
      // Begun where the stronger ridge ended, never at another part's end: that one has seen the records held out here.
      const fitted = fitLogistic(layout, training, { ridge }, path[r - 1]);
      path.push(fitted);
      records.forEach((record, i) => {
        if (part[i] === p)
          (heldOut[r] as Float64Array[])[i] = safeLog(temper(logisticScores(layout, fitted, record.findings), 1));
      });
    });
  }
  const losses = heldOut.map((logs) => logs.reduce((sum, log, i) => sum + lossOf(log, records[i] as CodedRecord), 0));
  const best = losses.indexOf(Math.min(...losses));
  const coefficients = fitLogistic(layout, records, { ridge: ridges[best] as number }, path[best]);
  return {
    name: 'logistic regression',
    predict: (findings) => temper(logisticScores(layout, coefficients, findings), 1),
    heldOut: heldOut[best] as Float64Array[],
  };
}

function lossOf(log: Float64Array, { causes }: CodedRecord): number {
  return -causes.reduce((sum, cause) => sum + (log[cause] as number), 0) / causes.length;
}
