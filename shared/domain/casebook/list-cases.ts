import type { CaseListItem } from '../../schemas/case-view';
import { forEachBit } from '../../stats/bit-set';
import type { CaseEntry } from './case-entry';
import { type CaseScope, rowsInScope } from './case-scope';
import type { CasebookModel } from './casebook-model';

export type CaseListQuery = CaseScope & { cursor: string | null; take: number };

/** Accepted cases within a scope, latest months first; `next` is the cursor of the following page. */
export function listAccepted(
  model: CasebookModel,
  { cursor, take, ...scope }: CaseListQuery,
): { cases: CaseListItem[]; next: string | null } {
  const after = cursor === null ? null : splitCursor(cursor);
  const entries: CaseEntry[] = [];
  forEachBit(rowsInScope(model, scope), (row) => {
    const entry = model.entries.get(row);
    if (entry && (after === null || compare(after, entry) < 0)) entries.push(entry);
  });
  entries.sort(compare);
  const page = entries.slice(0, take);
  const last = page.at(-1);
  return {
    cases: page.map((entry) => listItem(model, entry)),
    next: last && entries.length > take ? `${last.month}.${last.id}` : null,
  };
}

type Place = Pick<CaseEntry, 'month' | 'id'>;

function compare(a: Place, b: Place): number {
  if (a.month !== b.month) return a.month < b.month ? 1 : -1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

function splitCursor(cursor: string): Place {
  const [month = '', id = ''] = cursor.split('.');
  return { month, id };
}

/** One line of a list of cases. */
export function listItem(model: Pick<CasebookModel, 'words' | 'coding'>, entry: CaseEntry): CaseListItem {
  const { words, coding } = model;
  const symptoms = entry.coded.findings.flatMap((f) => {
    const named = coding.observables[f.observable];
    return named?.kind === 'symptom' && f.value === 1 ? [words.symptoms.get(named.id)?.label ?? named.id] : [];
  });
  return {
    id: entry.id,
    month: entry.month,
    device: { slug: entry.device, label: words.devices.get(entry.device)?.label ?? entry.device },
    symptoms,
    causes: entry.causes.map((c) => ({
      id: c.cause,
      label: words.causes.get(c.cause)?.label ?? c.cause,
      designators: c.designators,
    })),
    outcome: entry.outcome,
    excerpt: entry.excerpt,
  };
}
