import { type BitSet, forEachBit, intersect } from '../../stats/bit-set';
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
  const rows = index.all.words.slice();
  if (scope.device) {
    const node = model.coding.deviceOf(scope.device);
    intersect(rows, node === undefined ? undefined : index.byDevice[node]);
  }
  if (scope.symptom) keep(rows, valueSets(model, 'symptom', scope.symptom).slice(1));
  if (scope.fix) keep(rows, valueSets(model, 'fix', scope.fix));
  const causes = causesMeant(model, scope);
  return causes === null ? rows : filterRows(rows, (row) => (index.rows[row]?.causes ?? []).some((cause) => causes.has(cause)));
}

/** Cases in which a part was suspected: a check of it was done, or a fix of it tried, whatever came of it. */
export function rowsSuspecting(model: CasebookModel, role: string): CaseRows {
  const { vocabulary } = model.coding;
  const rows = model.index.all.words.slice();
  keep(rows, [
    ...vocabulary.checks.filter((c) => c.targetRole === role).flatMap((c) => valueSets(model, 'check', c.slug)),
    ...vocabulary.fixes.filter((f) => f.role === role).flatMap((f) => valueSets(model, 'fix', f.slug)),
  ]);
  return rows;
}

/** What is in both. */
export function bothRows(a: CaseRows, b: CaseRows): CaseRows {
  return a.map((word, at) => word & (b[at] ?? 0));
}

/** How many rows there are. */
export function countRows(rows: CaseRows): number {
  let count = 0;
  forEachBit(rows, () => {
    count += 1;
  });
  return count;
}

/** Records of every value of an observable that some case carries; a symptom's are absent, then present. */
function valueSets(model: CasebookModel, kind: 'symptom' | 'check' | 'fix', id: string): (BitSet | undefined)[] {
  const observable = model.coding.observableOf(kind, id);
  if (observable === undefined) return [];
  const { valueStarts, valueCounts } = model.coding.layout;
  const start = valueStarts[observable] as number;
  return Array.from({ length: valueCounts[observable] as number }, (_, value) => model.index.byValue[start + value]);
}

/** Keeps in `rows` what is in any of the sets. */
function keep(rows: CaseRows, sets: readonly (BitSet | undefined)[]): void {
  for (let w = 0; w < rows.length; w += 1) {
    let any = 0;
    for (const set of sets) any |= set?.words[w] ?? 0;
    rows[w] = (rows[w] as number) & any;
  }
}

function causesMeant(model: CasebookModel, { cause, part }: CaseScope): Set<number> | null {
  if (!cause && !part) return null;
  const meant = model.coding.vocabulary.causes.flatMap(({ slug, role }, number) =>
    (!cause || slug === cause) && (!part || role === part) ? [number] : [],
  );
  return new Set(meant);
}

function filterRows(rows: CaseRows, wanted: (row: number) => boolean): CaseRows {
  const kept = new Uint32Array(rows.length);
  forEachBit(rows, (row) => {
    if (wanted(row)) kept[row >>> 5] = (kept[row >>> 5] as number) | (1 << (row & 31));
  });
  return kept;
}
