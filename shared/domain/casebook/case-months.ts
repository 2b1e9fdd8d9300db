import type { MonthCount } from '../../schemas/counted-share';
import { forEachBit } from '../../stats/bit-set';
import { monthText } from './case-entry';
import type { CaseRows } from './case-scope';
import type { CasebookModel } from './casebook-model';

/** Cases per month, from the first month that has one to the last, months without a case included. */
export function monthCounts(model: CasebookModel, rows: CaseRows): MonthCount[] {
  const counts = new Map<number, number>();
  forEachBit(rows, (row) => {
    const month = model.index.month[row] as number;
    counts.set(month, (counts.get(month) ?? 0) + 1);
  });
  if (counts.size === 0) return [];
  const first = Math.min(...counts.keys());
  const last = Math.max(...counts.keys());
  return Array.from({ length: last - first + 1 }, (_, i) => ({ month: monthText(first + i), count: counts.get(first + i) ?? 0 }));
}
