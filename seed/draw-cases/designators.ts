import type { Board } from '../../shared/schemas/device';
import { hashText, pickIndex, seededRandom } from '../random';
import type { Random } from '../world';

/** Designators of a role on a board, each with its share of that role's failures: some chips fail more than their twins. */
export function designatorShares(board: Board, role: string): { designator: string; share: number }[] {
  const parts = board.parts.filter((part) => part.role === role);
  const weights = parts.map((part) => {
    const random = seededRandom(hashText(`${board.slug} ${part.designator}`));
    return 0.25 + 3 * random() ** 3;
  });
  const total = weights.reduce((a, b) => a + b, 0);
  return parts.map((part, index) => ({ designator: part.designator, share: (weights[index] as number) / total }));
}

/** One of a role's designators, drawn by its share; null where the board has none. */
export function drawDesignator(random: Random, board: Board, role: string): string | null {
  const shares = designatorShares(board, role);
  if (shares.length === 0) return null;
  return (
    shares[
      pickIndex(
        random,
        shares.map((each) => each.share),
      )
    ] as { designator: string }
  ).designator;
}
