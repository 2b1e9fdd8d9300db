import type { CauseShare, CountedShare, Named, NamedShare } from '../../schemas/counted-share';
import { forEachBit } from '../../stats/bit-set';
import { dirichletMarginalInterval } from '../../stats/dirichlet-marginal-interval';
import { jeffreysInterval } from '../../stats/jeffreys-interval';
import { NO_CAUSE } from '../../stats/record-index';
import { forEachCause } from '../../stats/record-words';
import { bothRows, type CaseRows, countRows, rowsInScope } from './case-scope';
import type { CasebookModel } from './casebook-model';

/** So many of so many, with the Jeffreys interval of the share, 90 %. */
export function countedShare(count: number, of: number): CountedShare {
  return { count, of, ...jeffreysInterval(count, of) };
}

/** A part by its role slug, with its label. */
export function namedRole(model: CasebookModel, role: string): Named {
  return { id: role, label: model.words.roles.get(role)?.label ?? role };
}

/**
 * Causes among these cases, commonest first, and how many of the cases have none. A case with two causes counts whole for
 * each. Intervals are Dirichlet marginals over the causes seen and "not found".
 */
export function causeShares(model: CasebookModel, rows: CaseRows): { causes: CauseShare[]; causeNotFound: number; of: number } {
  const counts = new Int32Array(model.coding.causes.length);
  let causeNotFound = 0;
  forEachBit(rows, (row) => {
    if (model.index.firstCause[row] === NO_CAUSE) causeNotFound += 1;
    forEachCause(model.index, row, (cause) => {
      counts[cause] = (counts[cause] as number) + 1;
    });
  });
  const of = countRows(rows);
  const categories = Math.max(2, counts.filter((n) => n > 0).length + 1);
  const causes = model.coding.vocabulary.causes.flatMap(({ slug, label, role }, cause) => {
    const count = counts[cause] as number;
    if (count === 0) return [];
    return [{ id: slug, label, role: namedRole(model, role), count, of, ...dirichletMarginalInterval(count, of, categories) }];
  });
  return { causes: causes.sort(byCount), causeNotFound, of };
}

/** Per model of the catalogue: how many of its cases are among these; models without any case are left out. */
export function deviceShares(model: CasebookModel, rows: CaseRows): NamedShare[] {
  return model.coding.catalogue.models
    .map(({ slug, name }) => {
      const own = rowsInScope(model, { device: slug });
      return { id: slug, label: name, ...countedShare(countRows(bothRows(own, rows)), countRows(own)) };
    })
    .filter(({ of }) => of > 0)
    .sort((a, b) => b.count / b.of - a.count / a.of || b.of - a.of);
}

/** Symptoms recorded as present among these cases, commonest first. */
export function symptomShares(model: CasebookModel, rows: CaseRows): NamedShare[] {
  const of = countRows(rows);
  return model.coding.vocabulary.symptoms
    .map(({ slug, label }) => {
      const count = countRows(bothRows(rows, rowsInScope(model, { symptom: slug })));
      return { id: slug, label, ...countedShare(count, of) };
    })
    .filter(({ count }) => count > 0)
    .sort(byCount);
}

/** How many of these cases had a part of each role as a cause. A case counts once for a role. */
export function roleCounts(model: CasebookModel, rows: CaseRows): Map<string, number> {
  const roleOf = model.coding.vocabulary.causes.map((cause) => cause.role);
  const counts = new Map<string, number>();
  forEachBit(rows, (row) => {
    const roles = new Set<string>();
    forEachCause(model.index, row, (cause) => roles.add(roleOf[cause] as string));
    for (const role of roles) counts.set(role, (counts.get(role) ?? 0) + 1);
  });
  return counts;
}

function byCount(a: NamedShare, b: NamedShare): number {
  return b.count - a.count || (a.label < b.label ? -1 : 1);
}
