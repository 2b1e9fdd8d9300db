import { countBits, setBit } from '../../stats/bit-set';
import { nodesBelow } from '../../stats/matching-counts';
import type { PostingList } from '../../stats/posting-list';
import { liveWords } from '../../stats/record-index';
import type { CasebookModel } from './casebook-model';

/** Which accepted cases are meant; what is left out or null does not narrow. Slugs of the vocabulary and catalogue. */
export type CaseScope = {
  /** A model with all its boards, or one board. */
  device?: string | null;
  /** Recorded as present. */
  symptom?: string | null;
  /** Among the causes found. */
  cause?: string | null;
  /** Tried, with whatever result. */
  fix?: string | null;
  /** Role of a part that was a cause. */
  part?: string | null;
};

/** A set of rows of the record index, one bit each. */
export type CaseRows = Uint32Array;

/** The accepted cases within a scope. A slug that is not known gives none. */
export function rowsInScope(model: CasebookModel, scope: CaseScope): CaseRows {
  const { index } = model;
  const rows = liveWords(index);
  if (scope.device) keep(rows, deviceLists(model, scope.device));
  if (scope.symptom) keep(rows, valueLists(model, 'symptom', scope.symptom).slice(1));
  if (scope.fix) keep(rows, valueLists(model, 'fix', scope.fix));
  const causes = causesMeant(model, scope);
  if (causes !== null) keep(rows, causes.map((cause) => index.byCause[cause]));
  return rows;
}

/** Cases in which a part was suspected: a check of it was done, or a fix of it tried, whatever came of it. */
export function rowsSuspecting(model: CasebookModel, role: string): CaseRows {
  const { vocabulary } = model.coding;
  const rows = liveWords(model.index);
  keep(rows, [
    ...vocabulary.checks.filter((c) => c.targetRole === role).flatMap((c) => valueLists(model, 'check', c.slug)),
    ...vocabulary.fixes.filter((f) => f.role === role).flatMap((f) => valueLists(model, 'fix', f.slug)),
  ]);
  return rows;
}

/** What is in both. */
export function bothRows(a: CaseRows, b: CaseRows): CaseRows {
  return a.map((word, at) => word & (b[at] ?? 0));
}

/** How many rows there are. */
export function countRows(rows: CaseRows): number {
  return countBits(rows);
}

function deviceLists({ coding, index }: CasebookModel, slug: string): (PostingList | undefined)[] {
  const node = coding.deviceOf(slug);
  if (node === undefined) return [];
  const below = nodesBelow(coding.layout, node);
  return index.byDevice.filter((_, other) => below[other] === 1);
}

/** Rows by value of an observable; a symptom's values are absent, then present. */
function valueLists(model: CasebookModel, kind: 'symptom' | 'check' | 'fix', id: string): (PostingList | undefined)[] {
  const observable = model.coding.observableOf(kind, id);
  if (observable === undefined) return [];
  const { valueStarts, valueCounts } = model.coding.layout;
  const start = valueStarts[observable] as number;
  return Array.from({ length: valueCounts[observable] as number }, (_, value) => model.index.byValue[start + value]);
}

/** Keeps in `rows` what is in any of the lists. */
function keep(rows: CaseRows, lists: readonly (PostingList | undefined)[]): void {
  const any = new Uint32Array(rows.length);
  for (const list of lists) {
    if (list === undefined) continue;
    for (let i = 0; i < list.length; i += 1) setBit(any, list.rows[i] as number);
  }
  for (let w = 0; w < rows.length; w += 1) rows[w] = (rows[w] as number) & (any[w] as number);
}

function causesMeant(model: CasebookModel, { cause, part }: CaseScope): number[] | null {
  if (!cause && !part) return null;
  return model.coding.vocabulary.causes.flatMap(({ slug, role }, number) =>
    (!cause || slug === cause) && (!part || role === part) ? [number] : [],
  );
}
