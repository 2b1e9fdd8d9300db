/**
 * Best of a list of candidates for one coordinate: walks from `start` towards whichever neighbour is lower until none
 * is. For functions with one valley along the list. Returns the index.
 */
export function walkDown(candidates: number, start: number, loss: (index: number) => number): number {
  let at = start;
  let best = loss(at);
  for (const direction of [1, -1]) {
    for (let next = at + direction; next >= 0 && next < candidates; next += direction) {
      const value = loss(next);
      if (!(value < best - 1e-9)) break;
      at = next;
      best = value;
    }
  }
  return at;
}
