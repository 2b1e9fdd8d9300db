import { aodeScores } from './aode';
import type { Shrinkage } from './dependence-shares';
import { fitShrinkage } from './fit-shrinkage';
import type { CodedRecord, Layout } from './layout';
import { countPairs, createPairCounts, type PairCounts } from './pair-counts';
import { type TableMember, temper } from './table-member';

/** Scores of each record with its own counts taken out, exactly; the counts are left as they were. */
export function aodeLeaveOneOut(counts: PairCounts, records: readonly CodedRecord[], shrinkage: Shrinkage): Float64Array[] {
  return records.map((record) => {
    countPairs(counts, record, -1);
    const scores = aodeScores(counts, record.findings, shrinkage);
    countPairs(counts, record, 1);
    return scores;
  });
}

/** Most records that are scored by leave-one-out: three numbers need no more, and each costs findings squared. */
const MOST_SCORED = 250;

/** Shrunken averaged one-dependence, its shrinkage and its exponent chosen by exact leave-one-out. */
export function fitAode(layout: Layout, records: readonly CodedRecord[]): Pick<TableMember, 'name' | 'predict'> {
  const counts = createPairCounts(layout, records);
  const stride = Math.ceil(records.length / MOST_SCORED);
  const scored = records.filter((_, i) => i % stride === 0);
  const { shrinkage, temperature } = fitShrinkage(scored, (s) => aodeLeaveOneOut(counts, scored, s));
  return {
    name: 'shrunken AODE',
    predict: (findings) => temper(aodeScores(counts, findings, shrinkage), temperature),
  };
}
