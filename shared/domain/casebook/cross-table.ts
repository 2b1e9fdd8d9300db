import type { CrossTable } from '../../schemas/counted-share';
import { bothRows, type CaseRows, countRows, rowsInScope } from './case-scope';
import type { CasebookModel } from './casebook-model';
import { causeShares, symptomShares } from './count-shares';

/** The commonest symptoms by the commonest causes of these cases, at most so many of each: how many cases have both. */
export function symptomsByCauses(model: CasebookModel, rows: CaseRows, most: { rows: number; columns: number }): CrossTable {
  const symptoms = symptomShares(model, rows).slice(0, most.rows);
  const causes = causeShares(model, rows).causes.slice(0, most.columns);
  const withCause = causes.map(({ id }) => bothRows(rows, rowsInScope(model, { cause: id })));
  return {
    rows: symptoms.map(({ id, label, count }) => ({ id, label, total: count })),
    columns: causes.map(({ id, label, count }) => ({ id, label, total: count })),
    counts: symptoms.map(({ id }) => {
      const own = rowsInScope(model, { symptom: id });
      return withCause.map((column) => countRows(bothRows(own, column)));
    }),
  };
}
