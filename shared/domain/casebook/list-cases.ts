import type { CaseListItem } from '../../schemas/case-view';
import type { CaseEntry } from './case-entry';
import type { CasebookModel } from './casebook-model';

export type CaseListQuery = { device: string | null; cursor: string | null; take: number };

/** Accepted cases of a model, a board or of all, latest months first; `next` is the cursor of the following page. */
export function listAccepted(
  model: CasebookModel,
  { device, cursor, take }: CaseListQuery,
): { cases: CaseListItem[]; next: string | null } {
  const wanted = device === null ? null : devicesUnder(model, device);
  const after = cursor === null ? null : splitCursor(cursor);
  const entries = [...model.entries.values()]
    .filter((entry) => (wanted === null || wanted.has(entry.device)) && (after === null || compare(after, entry) < 0))
    .sort(compare);
  const page = entries.slice(0, take);
  const last = page.at(-1);
  return {
    cases: page.map((entry) => listItem(model, entry)),
    next: last && entries.length > take ? `${last.month}.${last.id}` : null,
  };
}

/** The slug itself and, for a model, its boards. */
export function devicesUnder(model: CasebookModel, slug: string): Set<string> {
  const place = model.words.devices.get(slug);
  if (!place) return new Set();
  return new Set(place.level === 'model' ? [slug, ...place.model.boards.map((b) => b.slug)] : [slug]);
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

function listItem(model: CasebookModel, entry: CaseEntry): CaseListItem {
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
