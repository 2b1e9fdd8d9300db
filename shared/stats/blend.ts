import type { CodedFinding, CodedRecord } from './layout';
import { FEWEST_TO_TUNE, fitTemperature, safeLog, type TableMember, temper } from './table-member';

/** Records that the belief in equal weights is worth, per member. */
const EVEN = 1;
const ROUNDS = 200;
/** The mean of good forecasts is a little too cautious; how much is fitted, and this many records say "not at all". */
const SHARPNESS_RIDGE = 8;

/**
 * Mean of the members' probabilities under fitted weights, raised to a fitted exponent: linear pools of calibrated
 * forecasts are too cautious (R. Ranjan & T. Gneiting, J. Royal Statistical Society B 72 (2010), 71-91). Weights and
 * exponent come from the members' held-out predictions (L. Breiman, Stacked regressions, Machine Learning 24 (1996), 49-64).
 */
export function blend(records: readonly CodedRecord[], members: readonly TableMember[]): TableMember {
  const weights = records.length < FEWEST_TO_TUNE ? members.map(() => 1 / members.length) : fitShares(records, members);
  const pool = (probabilities: readonly Float64Array[]) =>
    (probabilities[0] as Float64Array).map((_, c) =>
      probabilities.reduce((sum, p, m) => sum + (weights[m] as number) * (p[c] as number), 0),
    );
  const pooled = records.map((_, i) => safeLog(pool(members.map(({ heldOut }) => (heldOut[i] as Float64Array).map(Math.exp)))));
  const { temperature } = fitTemperature(pooled, records, { usual: 1, ridge: SHARPNESS_RIDGE });
  return {
    name: 'blend',
    predict: (findings: readonly CodedFinding[]) =>
      temper(safeLog(pool(members.map((member) => member.predict(findings)))), temperature),
    heldOut: pooled.map((log) => safeLog(temper(log, temperature))),
  };
}

/** Mixture weights of greatest held-out likelihood, by expectation and maximisation; positive, summing to 1. */
export function fitShares(records: readonly CodedRecord[], members: readonly Pick<TableMember, 'heldOut'>[]): number[] {
  // Of a record with several causes each member is credited with the probability it gave to any of them.
  const given = records.map(({ causes }, i) =>
    members.map(({ heldOut }) => causes.reduce((sum, cause) => sum + Math.exp((heldOut[i] as Float64Array)[cause] as number), 0)),
  );
  let weights = members.map(() => 1 / members.length);
  for (let round = 0; round < ROUNDS; round += 1) {
    const credit = members.map(() => EVEN);
    for (const row of given) {
      const total = row.reduce((sum, p, m) => sum + p * (weights[m] as number), 0);
      row.forEach((p, m) => {
        credit[m] = (credit[m] as number) + (p * (weights[m] as number)) / total;
      });
    }
    const all = credit.reduce((sum, n) => sum + n, 0);
    weights = credit.map((n) => n / all);
  }
  return weights;
}
