import { COUNT_UNIT, valueTotal } from './counts';
import type { PairCounts } from './pair-counts';

/**
 * The tree of tree-augmented naive Bayes: the spanning tree of greatest conditional mutual information I(X; Y | C) over
 * the observables, rooted at the first one (N. Friedman, D. Geiger & M. Goldszmidt, Machine Learning 29 (1997), 131-163).
 * @returns the parent of each observable, -1 for the root
 */
export function tanTree(counts: PairCounts): Int32Array {
  const O = counts.layout.kinds.length;
  const parents = new Int32Array(O).fill(-1);
  const best = new Float64Array(O).fill(Number.NEGATIVE_INFINITY);
  const inTree = new Uint8Array(O);
  for (let added = 0; added < O; added += 1) {
    let next = -1;
    for (let o = 0; o < O; o += 1) {
      if (inTree[o] === 0 && (next === -1 || (best[o] as number) > (best[next] as number))) next = o;
    }
    inTree[next] = 1;
    for (let o = 0; o < O; o += 1) {
      if (inTree[o] === 1) continue;
      const information = conditionalInformation(counts, next, o);
      if (information > (best[o] as number)) {
        best[o] = information;
        parents[o] = next;
      }
    }
  }
  return parents;
}

/** I(X; Y | C) in nats times records, over the records where both were observed; from the bare counts. */
export function conditionalInformation(counts: PairCounts, x: number, y: number): number {
  const { layout, pair } = counts;
  const C = layout.causeCount;
  const F = valueTotal(layout);
  const [xFrom, xTo] = [layout.valueStarts[x] as number, layout.valueStarts[x + 1] as number];
  const [yFrom, yTo] = [layout.valueStarts[y] as number, layout.valueStarts[y + 1] as number];
  let information = 0;
  for (let c = 0; c < C; c += 1) {
    const rows = new Float64Array(xTo - xFrom);
    const columns = new Float64Array(yTo - yFrom);
    let total = 0;
    for (let f = xFrom; f < xTo; f += 1) {
      for (let g = yFrom; g < yTo; g += 1) {
        const n = pair[(f * F + g) * C + c] as number;
        rows[f - xFrom] = (rows[f - xFrom] as number) + n;
        columns[g - yFrom] = (columns[g - yFrom] as number) + n;
        total += n;
      }
    }
    for (let f = xFrom; f < xTo; f += 1) {
      for (let g = yFrom; g < yTo; g += 1) {
        const n = pair[(f * F + g) * C + c] as number;
        if (n > 0) information += n * Math.log((n * total) / ((rows[f - xFrom] as number) * (columns[g - yFrom] as number)));
      }
    }
  }
  return information / COUNT_UNIT;
}
