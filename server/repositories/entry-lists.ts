import type { Db } from '../db';

export type SynonymKind = 'role' | 'symptom' | 'symptom-absent' | 'check' | 'outcome' | 'cause' | 'fix' | 'model';
export type TagKind = 'symptom' | 'check' | 'cause' | 'fix';
export type TagName = 'category' | 'instrument' | 'need' | 'caution';

type SynonymRow = { kind: string; owner: string; position: number; text: string };
type TagRow = { kind: string; owner: string; name: string; position: number; value: string };

/** One row per synonym, in order. */
export function synonymRows(kind: SynonymKind, owner: string, texts: readonly string[]): SynonymRow[] {
  return texts.map((text, position) => ({ kind, owner, position, text }));
}

/** One row per value of a closed-set list, in order. */
export function tagRows(kind: TagKind, owner: string, name: TagName, values: readonly string[]): TagRow[] {
  return values.map((value, position) => ({ kind, owner, name, position, value }));
}

/** Reads all synonyms of the given kinds; the answer returns one owner's, in order (empty where there are none). */
export async function readSynonyms(db: Db, kinds: readonly SynonymKind[]) {
  const rows = await db.synonym.findMany({
    where: { kind: { in: [...kinds] } },
    orderBy: [{ kind: 'asc' }, { owner: 'asc' }, { position: 'asc' }],
    select: { kind: true, owner: true, text: true },
  });
  const lists = groupBy(rows, (row) => `${row.kind} ${row.owner}`);
  return (kind: SynonymKind, owner: string): string[] => (lists.get(`${kind} ${owner}`) ?? []).map((row) => row.text);
}

/** Reads all closed-set lists; the answer returns one owner's list, in order (empty where there is none). */
export async function readTags(db: Db) {
  const rows = await db.entryTag.findMany({
    orderBy: [{ kind: 'asc' }, { owner: 'asc' }, { name: 'asc' }, { position: 'asc' }],
    select: { kind: true, owner: true, name: true, value: true },
  });
  const lists = groupBy(rows, (row) => `${row.kind} ${row.owner} ${row.name}`);
  return (kind: TagKind, owner: string, name: TagName): string[] =>
    (lists.get(`${kind} ${owner} ${name}`) ?? []).map((row) => row.value);
}

/** Groups rows by key, keeping their order. */
export function groupBy<T, K>(rows: readonly T[], key: (row: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const row of rows) {
    const group = groups.get(key(row));
    if (group) group.push(row);
    else groups.set(key(row), [row]);
  }
  return groups;
}
