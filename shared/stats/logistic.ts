import { valueTotal } from './counts';
import { distinctFindings, flatValue } from './findings';
import type { CodedFinding, CodedRecord, Layout } from './layout';
import { minimise } from './minimise';

/** Coefficients `[f * C + c]` per flat value and cause, then one constant per cause at `[F * C + c]`. */
export type LogisticCoefficients = Float64Array;

/** How the coefficients are held back: `ridge / 2` times the squared distance from `towards` (0 unless given). */
export type LogisticPenalty = { ridge: number; towards?: Float64Array };

/** The constants are hardly held back: a fraction of the ridge of the others. */
const CONSTANT_RIDGE = 0.1;
const NEGLIGIBLE = 1e-7;

/**
 * Multinomial logistic regression on one indicator per value; a missing finding adds nothing. Minimises log loss plus
 * the penalty, a convex problem (A. Agresti, Categorical Data Analysis, 2nd ed. 2002, section 7.1; the ridge after
 * S. le Cessie & J. C. van Houwelingen, Applied Statistics 41 (1992), 191-201).
 * @param start where to begin, for instance the solution under another ridge
 */
export function fitLogistic(
  layout: Layout,
  records: readonly CodedRecord[],
  penalty: LogisticPenalty,
  start?: LogisticCoefficients,
): LogisticCoefficients {
  const C = layout.causeCount;
  const size = (valueTotal(layout) + 1) * C;
  const rows = records
    .filter((r) => r.causes.length > 0)
    .map((r) => ({ causes: r.causes, flat: withConstant(layout, r.findings) }));
  const towards = penalty.towards ?? new Float64Array(size);
  return minimise(
    (point, gradient) => {
      let loss = 0;
      for (let i = 0; i < size; i += 1) {
        const ridge = penalty.ridge * (i >= size - C ? CONSTANT_RIDGE : 1);
        const off = (point[i] as number) - (towards[i] as number);
        loss += (ridge / 2) * off * off;
        gradient[i] = ridge * off;
      }
      for (const { causes, flat } of rows) {
        const excess = softmax(scoresOf(point, flat, C));
        for (const cause of causes) loss -= Math.log(Math.max(1e-300, excess[cause] as number)) / causes.length;
        for (const cause of causes) excess[cause] = (excess[cause] as number) - 1 / causes.length;
        const counted = notable(excess);
        for (const f of flat) {
          for (const c of counted) gradient[f * C + c] = (gradient[f * C + c] as number) + (excess[c] as number);
        }
      }
      return loss;
    },
    start ?? towards,
    { gain: 1e-3 },
  );
}

/** Scores per cause, natural logs up to a constant, length causeCount. */
export function logisticScores(
  layout: Layout,
  coefficients: LogisticCoefficients,
  findings: readonly CodedFinding[],
): Float64Array {
  return scoresOf(coefficients, withConstant(layout, findings), layout.causeCount);
}

function withConstant(layout: Layout, findings: readonly CodedFinding[]): Int32Array {
  const flat = distinctFindings(layout, findings).map((finding) => flatValue(layout, finding));
  return Int32Array.from([...flat.sort((a, b) => a - b), valueTotal(layout)]);
}

function scoresOf(coefficients: Float64Array, flat: Int32Array, C: number): Float64Array {
  const scores = new Float64Array(C);
  for (const f of flat) {
    for (let c = 0, at = f * C; c < C; c += 1, at += 1) scores[c] = (scores[c] as number) + (coefficients[at] as number);
  }
  return scores;
}

/** Causes whose part of the gradient is worth adding: most of a record's are next to nothing, and cost as much. */
function notable(excess: Float64Array): number[] {
  const causes: number[] = [];
  for (let c = 0; c < excess.length; c += 1) if (Math.abs(excess[c] as number) > NEGLIGIBLE) causes.push(c);
  return causes;
}

function softmax(scores: Float64Array): Float64Array {
  let top = Number.NEGATIVE_INFINITY;
  for (const score of scores) if (score > top) top = score;
  let total = 0;
  for (let c = 0; c < scores.length; c += 1) {
    const e = Math.exp((scores[c] as number) - top);
    scores[c] = e;
    total += e;
  }
  for (let c = 0; c < scores.length; c += 1) scores[c] = (scores[c] as number) / total;
  return scores;
}
