import type { Shrinkage } from './dependence-shares';
import { fitShrinkage } from './fit-shrinkage';
import type { CodedFinding, CodedRecord, Layout } from './layout';
import { countPairs, createPairCounts } from './pair-counts';
import { innerFolds, safeLog, type TableMember, temper } from './table-member';
import { tanScores } from './tan';
import { tanTree } from './tan-tree';

const PARTS = 10;

/**
 * Shrunken tree-augmented naive Bayes, averaged over the trees that grow when a tenth of the records is left out. A
 * tree depends on every record, so held-out scores come from counts and a tree without the record's tenth: taking the
 * record out of the counts alone would flatter it.
 */
export function fitTan(layout: Layout, records: readonly CodedRecord[]): TableMember {
  const counts = createPairCounts(layout, records);
  const part = innerFolds(records, PARTS);
  const parts = part.reduce((most, p) => Math.max(most, p + 1), 0);
  const withoutPart = <T>(p: number, look: () => T): T => {
    const mine = records.filter((_, i) => part[i] === p);
    for (const record of mine) countPairs(counts, record, -1);
    const seen = look();
    for (const record of mine) countPairs(counts, record, 1);
    return seen;
  };
  const trees = Array.from({ length: parts }, (_, p) => withoutPart(p, () => tanTree(counts)));
  const heldOutScores = (shrinkage: Shrinkage) => {
    const scores: Float64Array[] = [];
    trees.forEach((parents, p) => {
      withoutPart(p, () => {
        records.forEach((record, i) => {
          if (part[i] === p) scores[i] = tanScores(counts, record.findings, { parents, shrinkage });
        });
      });
    });
    return scores;
  };
  const { shrinkage, temperature, scores } = fitShrinkage(records, heldOutScores);
  const predict = (findings: readonly CodedFinding[]) => {
    const mean = new Float64Array(layout.causeCount);
    for (const parents of trees) {
      temper(tanScores(counts, findings, { parents, shrinkage }), temperature).forEach((p, c) => {
        mean[c] = (mean[c] as number) + p / trees.length;
      });
    }
    return mean;
  };
  return { name: 'shrunken TAN', predict, heldOut: scores.map((score) => safeLog(temper(score, temperature))) };
}
