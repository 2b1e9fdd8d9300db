import type { CodedRecord } from './layout';
import { createRandom, shuffle } from './random';

/**
 * The fold of each record, 0 to folds - 1, dealt at random within each first cause so that folds have like mixtures.
 * @throws RangeError where there are fewer than two folds or fewer records than folds
 */
export function stratifiedFolds(records: readonly CodedRecord[], folds: number, seed: number): Int32Array {
  if (!Number.isInteger(folds) || folds < 2) throw new RangeError('At least two folds are needed.');
  if (records.length < folds) throw new RangeError(`${records.length} records cannot fill ${folds} folds.`);
  const random = createRandom(seed);
  const byCause = new Map<number, number[]>();
  records.forEach((record, i) => {
    const cause = record.causes[0] ?? -1;
    byCause.set(cause, [...(byCause.get(cause) ?? []), i]);
  });
  const fold = new Int32Array(records.length);
  let next = 0;
  for (const rows of [...byCause].sort((a, b) => a[0] - b[0]).map(([, list]) => shuffle(list, random))) {
    for (const row of rows) {
      fold[row] = next % folds;
      next += 1;
    }
  }
  return fold;
}
