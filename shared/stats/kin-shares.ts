import { type CauseTallies, createCauseTallies } from './cause-tallies';
import type { Counts } from './counts';

/** Records of a cause's kin that the observable is not about: with one value, and in all. */
export type KinCount = { records: number; total: number };

/** What the kin of causes showed of one observable, from all devices. */
export type KinCounts = {
  /** Per level of `Layout.kin`, coarse to fine: the kin of the cause without itself. Null where it has none. */
  of(cause: number, value: number): KinCount[] | null;
};

/** Sums over kin; a result stays valid until the counts change. */
export function createKinCounts(counts: Counts, tallies = createCauseTallies(counts)): (observable: number) => KinCounts | null {
  const levels = counts.layout.kin ?? [];
  let revision = -1;
  let known = new Map<number, KinCounts>();
  return (observable) => {
    if (levels.length === 0) return null;
    if (revision !== counts.revision) {
      revision = counts.revision;
      known = new Map();
    }
    let found = known.get(observable);
    if (found === undefined) {
      found = kinCounts(levels, tallies(observable));
      known.set(observable, found);
    }
    return found;
  };
}

function kinCounts(levels: readonly Int32Array[], { values: K, records: own }: CauseTallies): KinCounts {
  const C = own.length / (K + 1);
  const sums = levels.map((groups) => {
    const sum = new Float64Array((C + 1) * (K + 1));
    for (let c = 0; c < C; c += 1) {
      const group = groups[c] as number;
      if (group < 0) continue;
      for (let v = 0; v <= K; v += 1) sum[group * (K + 1) + v] = (sum[group * (K + 1) + v] as number) + (own[c * (K + 1) + v] as number);
    }
    return sum;
  });
  return {
    // Called for every cause of every table: no closures here.
    of(cause, value) {
      const found: KinCount[] = [];
      const ownAt = cause * (K + 1);
      for (let level = 0; level < levels.length; level += 1) {
        const group = (levels[level] as Int32Array)[cause] as number;
        if (group < 0) continue;
        const sum = sums[level] as Float64Array;
        const at = group * (K + 1);
        found.push({
          records: Math.max(0, (sum[at + value] as number) - (own[ownAt + value] as number)),
          total: Math.max(0, (sum[at + K] as number) - (own[ownAt + K] as number)),
        });
      }
      return found.length === 0 ? null : found;
    },
  };
}

/**
 * A share as the kin have it, coarse to fine: each level's own share counts as its records do, limited to what kin are worth
 * to each other there, against `pull` records of what is known so far.
 */
export function leanOnKin(share: number, kin: readonly KinCount[], limits: { worth: readonly number[]; pull: number }): number {
  let leaned = share;
  for (let level = 0; level < kin.length; level += 1) {
    const { records, total } = kin[level] as KinCount;
    const scale = 1 / (1 + total / (limits.worth[level] as number));
    leaned = (records * scale + limits.pull * leaned) / (total * scale + limits.pull);
  }
  return leaned;
}
