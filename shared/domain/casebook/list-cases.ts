import type { CaseRecord } from '../../schemas/case';
import type { CaseListItem } from '../../schemas/case-view';
import { bestFirst, createBestRows, offerRow } from '../../stats/best-rows';
import { forEachBit } from '../../stats/bit-set';
import { compareKeys } from '../../stats/record-keys';
import { type CaseEntry, monthNumber } from './case-entry';
import { caseOfKey } from './case-key';
import { type CaseScope, rowsInScope } from './case-scope';
import type { CasebookModel } from './casebook-model';
import type { VocabularyWords } from './vocabulary-words';

export type CaseListQuery = CaseScope & { cursor: string | null; take: number };

/** A line of the list as the model knows it: its text is read where it is shown. */
export type CaseListFigures = Omit<CaseListItem, 'excerpt'>;

/** Accepted cases within a scope, latest months first, then in order of id; `next` is the cursor of the following page. */
export function listAccepted(
  model: CasebookModel,
  { cursor, take, ...scope }: CaseListQuery,
): { cases: CaseListFigures[]; next: string | null } {
  const { index } = model;
  const after = cursor === null ? null : splitCursor(cursor);
  const order = (a: number, b: number) => compareKeys(index.keys, a, b);
  const best = createBestRows(take + 1);
  forEachBit(rowsInScope(model, scope), (row) => {
    if (after === null || comesAfter(model, row, after)) offerRow(best, row, index.month[row] as number, order);
  });
  const rows = bestFirst(best, order).slice(0, take);
  const entries = rows.flatMap(({ row }) => model.entries.get(row) ?? []);
  const last = entries.at(-1);
  return {
    cases: entries.map((entry) => listItem(model, entry)),
    next: last && best.size > take ? `${last.month}.${last.id}` : null,
  };
}

type Place = { month: number; id: string };

function splitCursor(cursor: string): Place {
  const [month = '', id = ''] = cursor.split('.');
  return { month: monthNumber(month), id };
}

function comesAfter({ index }: CasebookModel, row: number, { month, id }: Place): boolean {
  const own = index.month[row] as number;
  if (own !== month) return own < month;
  const { high, middle, low } = index.keys;
  return caseOfKey([high[row] as number, middle[row] as number, low[row] as number]) > id;
}

/** One line of a list of cases. */
export function listItem(model: Pick<CasebookModel, 'words' | 'coding'>, entry: CaseEntry): CaseListFigures {
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
  };
}

/** The same line of a case as it is stored. */
export function lineOfRecord(words: VocabularyWords, { id, content }: CaseRecord): CaseListFigures {
  return {
    id,
    month: content.month,
    device: { slug: content.device, label: words.devices.get(content.device)?.label ?? content.device },
    symptoms: content.symptoms.filter((s) => s.present).map((s) => words.symptoms.get(s.symptom)?.label ?? s.symptom),
    causes: content.causes.map(({ cause, designators }) => ({ id: cause, label: words.causes.get(cause)?.label ?? cause, designators })),
    outcome: content.outcome,
  };
}
