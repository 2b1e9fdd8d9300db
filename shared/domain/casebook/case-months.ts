import type { MonthCount } from '../../schemas/counted-share';
import { forEachBit } from '../../stats/bit-set';
import type { CaseRows } from './case-scope';
import type { CasebookModel } from './casebook-model';

/** Cases per month, from the first month that has one to the last, months without a case included. */
export function monthCounts(model: CasebookModel, rows: CaseRows): MonthCount[] {
  const counts = new Map<string, number>();
  forEachBit(rows, (row) => {
    const month = model.entries.get(row)?.month;
    if (month !== undefined) counts.set(month, (counts.get(month) ?? 0) + 1);
  });
  const [first, last] = [[...counts.keys()].sort()[0], [...counts.keys()].sort().at(-1)];
  if (first === undefined || last === undefined) return [];
  const months: MonthCount[] = [];
  for (let month = first; month <= last; month = monthAfter(month)) months.push({ month, count: counts.get(month) ?? 0 });
  return months;
}

function monthAfter(month: string): string {
  const [year = 0, number = 0] = month.split('-').map(Number);
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, '0')}`;
}
