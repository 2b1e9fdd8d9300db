import type { Shrinkage } from './dependence-shares';
import type { CodedRecord } from './layout';
import { FEWEST_TO_TUNE, fitTemperature } from './table-member';

export type FittedShrinkage = { shrinkage: Shrinkage; temperature: number; scores: Float64Array[] };

const USUAL: Shrinkage = { single: 0.3, pair: 1 };
const PAIRS = [0.3, 1, 3, 10];
const SINGLES = [0.1, 1, 3];

/** Every shrinkage that may be asked for, for those who would rather score a record under all of them at once. */
export const SHRINKAGES: readonly Shrinkage[] = [USUAL.single, ...SINGLES].flatMap((single) => PAIRS.map((pair) => ({ single, pair })));

/**
 * Chooses how far shares are pulled, one after the other, by the log loss of held-out scores under their best common
 * exponent.
 * @param heldOutScores scores of every record by the others alone, under a given shrinkage
 */
export function fitShrinkage(
  records: readonly CodedRecord[],
  heldOutScores: (shrinkage: Shrinkage) => Float64Array[],
): FittedShrinkage {
  const attempt = (shrinkage: Shrinkage) => {
    const scores = heldOutScores(shrinkage);
    return { shrinkage, scores, ...fitTemperature(scores, records) };
  };
  let best = attempt(USUAL);
  if (records.length < FEWEST_TO_TUNE) return best;
  const tryAlso = (shrinkage: Shrinkage) => {
    const tried = attempt(shrinkage);
    if (tried.loss < best.loss) best = tried;
  };
  for (const pair of PAIRS) if (pair !== USUAL.pair) tryAlso({ ...USUAL, pair });
  const { pair } = best.shrinkage;
  for (const single of SINGLES) tryAlso({ single, pair });
  return best;
}
