import type { Database } from 'better-sqlite3';
import { FILTER_NAMES, type FilterName } from '../../../shared/schemas/search';

/**
 * What cases can be narrowed by, in memory: by the number that a case has in the full text ("doc", always even), half of
 * it being its place. Counting the values of some thousand found cases is then a walk over whole numbers; asking the tables
 * for them took ten times as long as finding the cases.
 */
export type CaseColumns = {
  /** Name and value by code. */
  readonly names: FilterName[];
  readonly values: string[];
  readonly codeOf: Map<string, number>;
  /** Codes in the order of their values; see `codesInOrder`. */
  inOrder: number[];
  /** Months since year 0 by place. */
  months: Uint16Array;
  /** Where the codes of a place begin; they end where those of the next one do. */
  starts: Uint32Array;
  codes: Uint16Array;
  codeCount: number;
  /** Places in use: all below this were read; `gone` marks those that hold no case (any more). */
  places: number;
  gone: Uint8Array;
};

const SINGLE = ['category', 'outcome', 'proof', 'year', 'photos'] as const satisfies readonly FilterName[];

type DocRow = [doc: number, month: string, ...values: string[]];

/** Reads columns from an index file and keeps them as it changes, whoever changes it. To be asked inside a transaction. */
export function columnReader(file: Database): () => CaseColumns {
  const made = file.prepare("SELECT value FROM state WHERE name = 'made'").pluck();
  const state = file.prepare("SELECT value FROM state WHERE name = 'state'").pluck();
  const docs = file.prepare(`SELECT doc, month, ${SINGLE.join(', ')} FROM case_doc WHERE doc > ? ORDER BY doc`).raw();
  const tags = file.prepare('SELECT doc, name, value FROM case_tag WHERE doc > ? ORDER BY doc').raw();
  const removed = file.prepare('SELECT rowid, doc FROM case_gone WHERE rowid > ? ORDER BY rowid').raw();
  let kept: { columns: CaseColumns; made: unknown; state: unknown; gone: number } | null = null;

  return () => {
    const now = state.get();
    const anew = made.get();
    if (kept === null || kept.made !== anew) kept = { columns: emptyColumns(), made: anew, state: undefined, gone: 0 };
    if (kept.state === now) return kept.columns;
    const { columns } = kept;
    const after = (columns.places - 1) * 2;
    const tagRows = tags.all(after) as [number, string, string][];
    let at = 0;
    for (const [doc, month, ...values] of docs.iterate(after) as IterableIterator<DocRow>) {
      const codes = values.map((value, i) => codeFor(columns, SINGLE[i] as FilterName, value));
      for (; at < tagRows.length && (tagRows[at]?.[0] as number) <= doc; at += 1) {
        const [, name, value] = tagRows[at] as [number, FilterName, string];
        codes.push(codeFor(columns, name, value));
      }
      addPlace(columns, doc / 2, monthNumber(month), codes);
    }
    for (const [row, doc] of removed.iterate(kept.gone) as IterableIterator<[number, number]>) {
      if (doc / 2 < columns.places) columns.gone[doc / 2] = 1;
      kept.gone = row;
    }
    kept.state = now;
    return columns;
  };
}

function emptyColumns(): CaseColumns {
  const columns = { months: new Uint16Array(64), starts: new Uint32Array(65), codes: new Uint16Array(512), gone: new Uint8Array(64) };
  // No case has the number 0.
  columns.gone[0] = 1;
  return { names: [], values: [], codeOf: new Map(), inOrder: [], ...columns, codeCount: 0, places: 1 };
}

const keyOf = (name: FilterName, value: string) => `${name} ${value}`;

function codeFor(columns: CaseColumns, name: FilterName, value: string): number {
  const key = keyOf(name, value);
  const known = columns.codeOf.get(key);
  if (known !== undefined) return known;
  columns.names.push(name);
  columns.values.push(value);
  columns.codeOf.set(key, columns.names.length - 1);
  return columns.names.length - 1;
}

/** All codes in the order of their values: sorted when there are new ones, not for every search. */
export function codesInOrder(columns: CaseColumns): readonly number[] {
  const { values, inOrder } = columns;
  if (inOrder.length === values.length) return inOrder;
  columns.inOrder = [...values.keys()].sort((a, b) => ((values[a] as string) < (values[b] as string) ? -1 : 1));
  return columns.inOrder;
}

/** The codes of these values of a filter; values that no case ever had have none. */
export function codesOf({ codeOf }: CaseColumns, name: FilterName, values: readonly string[]): number[] {
  return values.flatMap((value) => codeOf.get(keyOf(name, value)) ?? []);
}

function monthNumber(month: string): number {
  return Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1;
}

/** A month as it is written. */
export function monthText(month: number): string {
  return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}`;
}

function addPlace(columns: CaseColumns, place: number, month: number, codes: readonly number[]): void {
  columns.months = roomFor(columns.months, place + 1);
  columns.gone = roomFor(columns.gone, place + 1);
  columns.starts = roomFor(columns.starts, place + 2);
  columns.codes = roomFor(columns.codes, columns.codeCount + codes.length);
  for (; columns.places < place; columns.places += 1) {
    columns.gone[columns.places] = 1;
    columns.starts[columns.places + 1] = columns.codeCount;
  }
  columns.months[place] = month;
  columns.codes.set(codes, columns.codeCount);
  columns.codeCount += codes.length;
  columns.starts[place] = columns.codeCount - codes.length;
  columns.starts[place + 1] = columns.codeCount;
  columns.places = place + 1;
}

function roomFor<T extends Uint8Array | Uint16Array | Uint32Array>(list: T, length: number): T {
  if (list.length >= length) return list;
  const grown = new (list.constructor as new (length: number) => T)(Math.max(length, list.length * 2));
  grown.set(list);
  return grown;
}

/** Names in their order, so that a set of them is a number of bits. */
export const nameBit = (name: FilterName) => 1 << FILTER_NAMES.indexOf(name);
