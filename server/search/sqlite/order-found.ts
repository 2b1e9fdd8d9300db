import type { Database } from 'better-sqlite3';
import type { SearchQuery } from '../../../shared/schemas/search';
import type { SearchCursor } from '../search-cursor';
import { type CaseColumns, monthText } from './case-columns';
import type { Found } from './narrow-found';

/** A case of a page: by what it was sorted, and its score (0 where no words were asked for). */
export type PageRow = { doc: number; id: string; key: number; score: number };
export type Page = { rows: PageRow[]; hasMore: boolean };

/** Puts found cases in order, page by page. */
export function foundOrder(file: Database) {
  const idOf = file.prepare('SELECT id FROM case_doc WHERE doc = ?').pluck();
  const docOf = file.prepare('SELECT doc FROM case_doc WHERE id = ?').pluck();

  /** One page: by score or month, ties by id. It begins after the cursor's case by that one's key of now. */
  return (columns: CaseColumns, found: Found, query: Pick<SearchQuery, 'sort' | 'take'>, cursor: SearchCursor | null): Page => {
    const { docs, scores } = found;
    const byScore = isByScore(query, found);
    const sign = byScore || query.sort !== 'oldest' ? 1 : -1;
    const keyAt = (i: number) => sign * (byScore ? (scores?.[i] as number) : (columns.months[(docs[i] as number) / 2] as number));
    const ids = new Map<number, string>();
    const id = (doc: number) => {
      const known = ids.get(doc) ?? (idOf.get(doc) as string);
      ids.set(doc, known);
      return known;
    };
    const after = cursor === null || (typeof cursor.key === 'number') !== byScore ? null : { key: keyNow(cursor, byScore, sign, keyAt), id: cursor.id };
    // The best so far, best first, and one more than asked for.
    const best: { doc: number; key: number; at: number }[] = [];
    const isBefore = (key: number, doc: number, than: { doc: number; key: number }) => key > than.key || (key === than.key && id(doc) < id(than.doc));
    for (let i = 0; i < docs.length; i += 1) {
      const key = keyAt(i);
      const doc = docs[i] as number;
      if (after !== null && (key > after.key || (key === after.key && id(doc) <= after.id))) continue;
      const worst = best.length > query.take ? best[query.take] : undefined;
      if (worst !== undefined && !isBefore(key, doc, worst)) continue;
      let to = best.length;
      while (to > 0 && isBefore(key, doc, best[to - 1] as (typeof best)[number])) to -= 1;
      best.splice(to, 0, { doc, key, at: i });
      if (best.length > query.take + 1) best.pop();
    }
    const rows = best.slice(0, query.take).map(({ doc, key, at }) => ({ doc, id: id(doc), key: sign * key, score: scores?.[at] ?? 0 }));
    return { rows, hasMore: best.length > query.take };

    /** A case's key may have changed since the page before; one that is not found any more keeps the key it had. */
    function keyNow(from: SearchCursor, isScore: boolean, direction: number, key: (i: number) => number): number {
      const doc = docOf.get(from.id) as number | undefined;
      const at = doc === undefined ? -1 : docs.indexOf(doc);
      if (at >= 0) return key(at);
      return direction * (isScore ? (from.key as number) : monthOf(String(from.key)));
    }
  };
}

/** Whether the order is that of the scores; else it is that of the months. */
export function isByScore({ sort }: Pick<SearchQuery, 'sort'>, { scores }: Found): boolean {
  return sort === 'relevance' && scores !== null;
}

/** What a cursor says of a row: its score, or its month as it is written. */
export function cursorKey(row: PageRow, byScore: boolean): number | string {
  return byScore ? row.key : monthText(row.key);
}

function monthOf(text: string): number {
  const [year = 0, month = 1] = text.split('-').map(Number);
  return year * 12 + month - 1;
}
