import { COUNT_UNIT, type Counts } from './counts';
import { readCells } from './sparse-rows';

/**
 * Records of one observable by the causes that it is not about, from all devices: `[c * (K + 1) + v]` with value v, in `K` with
 * any. Nought for causes that it is about.
 */
export type CauseTallies = { readonly values: number; readonly records: Float64Array };

/** Tallies by observable; kept until the counts change. Read, never change. */
export function createCauseTallies(counts: Counts): (observable: number) => CauseTallies {
  let revision = -1;
  let known = new Map<number, CauseTallies>();
  return (observable) => {
    if (revision !== counts.revision) {
      revision = counts.revision;
      known = new Map();
    }
    let found = known.get(observable);
    if (found === undefined) {
      found = countByCause(counts, observable);
      known.set(observable, found);
    }
    return found;
  };
}

function countByCause(counts: Counts, observable: number): CauseTallies {
  const { layout } = counts;
  const C = layout.causeCount;
  const K = layout.valueCounts[observable] as number;
  const first = layout.valueStarts[observable] as number;
  const records = new Float64Array(C * (K + 1));
  const counted = new Float64Array(K);
  for (let c = 0; c < C; c += 1) {
    // Node 0 is the root, so its rows have the causes' own numbers as keys.
    const row = counts.nodeRows.get(c);
    if (row === undefined || layout.onTarget[observable * C + c] === 1) continue;
    counted.fill(0);
    readCells(counts.rows, row, { first, end: first + K, into: counted, sign: 1 });
    for (let v = 0; v < K; v += 1) {
      const n = (counted[v] as number) / COUNT_UNIT;
      records[c * (K + 1) + v] = n;
      records[c * (K + 1) + K] = (records[c * (K + 1) + K] as number) + n;
    }
  }
  return { values: K, records };
}

/**
 * Numbers of records per value in which no cause is heard above others: a cause's records are worth at most `worth` together,
 * since they say again and again what one cause shows (n becomes n / (1 + n / worth)). Most causes never show most symptoms and a
 * few nearly always do; added up record by record, a common cause would lend its symptom to all the rare ones.
 */
export function evenlyHeard({ values: K, records }: CauseTallies, worth: number): Float64Array {
  const sums = new Float64Array(K);
  for (let at = 0; at < records.length; at += K + 1) {
    const total = records[at + K] as number;
    if (total <= 0) continue;
    const scale = 1 / (1 + total / worth);
    for (let v = 0; v < K; v += 1) sums[v] = (sums[v] as number) + scale * (records[at + v] as number);
  }
  return sums;
}
