/** The best rows met so far, the worst of them on top: a heap of bounded size in two arrays. */
export type BestRows = { rows: Uint32Array; scores: Float64Array; size: number };

/** Which of two rows comes first where both score the same: below 0 where the first does. */
type Order = (a: number, b: number) => number;

/** Room for the best `limit` rows. */
export function createBestRows(limit: number): BestRows {
  return { rows: new Uint32Array(limit), scores: new Float64Array(limit), size: 0 };
}

/** Takes a row in where it is among the best. */
export function offerRow(best: BestRows, row: number, score: number, order: Order): void {
  const { rows, scores } = best;
  if (best.size < rows.length) {
    liftUp(best, best.size, row, score, order);
    best.size += 1;
    return;
  }
  if (rows.length === 0 || score < (scores[0] as number)) return;
  if (score === scores[0] && order(row, rows[0] as number) >= 0) return;
  sinkDown(best, row, score, order);
}

/** The rows, best first. */
export function bestFirst({ rows, scores, size }: BestRows, order: Order): { row: number; score: number }[] {
  return Array.from({ length: size }, (_, i) => ({ row: rows[i] as number, score: scores[i] as number })).sort(
    (a, b) => b.score - a.score || order(a.row, b.row),
  );
}

/** Puts a row at a place of the heap, or nearer to the top while what stands there is better. */
function liftUp({ rows, scores }: BestRows, from: number, row: number, score: number, order: Order): void {
  let at = from;
  while (at > 0) {
    const up = (at - 1) >> 1;
    const isBetter = (scores[up] as number) > score || (scores[up] === score && order(rows[up] as number, row) < 0);
    if (!isBetter) break;
    rows[at] = rows[up] as number;
    scores[at] = scores[up] as number;
    at = up;
  }
  rows[at] = row;
  scores[at] = score;
}

/** Puts a row in place of the worst, below all that are worse than it. */
function sinkDown({ rows, scores, size }: BestRows, row: number, score: number, order: Order): void {
  let at = 0;
  for (;;) {
    let next = at * 2 + 1;
    if (next >= size) break;
    if (next + 1 < size && isWorse(scores, rows, next + 1, next, order)) next += 1;
    const worse = (scores[next] as number) < score || (scores[next] === score && order(row, rows[next] as number) < 0);
    if (!worse) break;
    rows[at] = rows[next] as number;
    scores[at] = scores[next] as number;
    at = next;
  }
  rows[at] = row;
  scores[at] = score;
}

function isWorse(scores: Float64Array, rows: Uint32Array, a: number, b: number, order: Order): boolean {
  const [left, right] = [scores[a] as number, scores[b] as number];
  return left < right || (left === right && order(rows[a] as number, rows[b] as number) > 0);
}
