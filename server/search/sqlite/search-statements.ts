import { FIELD_WEIGHTS, SEARCH_FIELDS } from '../../../shared/domain/search/search-document';
import { FILTER_NAMES, type FilterName, type SearchFilters, type SearchSort } from '../../../shared/schemas/search';
import { type MatchText, wholeMatch } from './match-text';

const WEIGHTS = SEARCH_FIELDS.map((field) => FIELD_WEIGHTS[field]).join(', ');
/** Higher is better; FTS5's own sign is the other way round. */
const SCORE = `-bm25(case_text, ${WEIGHTS})`;

/** Filters of which a case has several values; the others are columns of the case. */
const TAGS: ReadonlySet<FilterName> = new Set(['symptom', 'cause', 'device']);

/** A piece of SQL and what its named parameters stand for. */
export type Statement = { sql: string; values: Record<string, string | number> };

/** What a case with all the words gains where those with some of them are listed too: more than any score. */
const ALL_WORDS = 1_000;

/** Rows (doc, score) of every case that the words find. */
function foundRows(match: MatchText, scored: boolean): Statement {
  if (match.must !== null) {
    const values: Statement['values'] = { match: wholeMatch(match) };
    let score = scored ? SCORE : '0';
    if (scored && match.best !== null) {
      values.best = match.best;
      score += ` + CASE WHEN rowid IN (SELECT rowid FROM case_text WHERE case_text MATCH @best) THEN ${ALL_WORDS} ELSE 0 END`;
    }
    return { sql: `SELECT rowid AS doc, ${score} AS score FROM case_text WHERE case_text MATCH @match`, values };
  }
  const all = 'SELECT doc, 0 AS score FROM case_doc';
  if (match.not === null) return { sql: all, values: {} };
  return { sql: `${all} WHERE doc NOT IN (SELECT rowid FROM case_text WHERE case_text MATCH @match)`, values: { match: match.not } };
}

/** The conditions that the filters put on a case `d`, but for one of them. */
function conditions(filters: SearchFilters, values: Statement['values'], except: FilterName | null = null): string {
  const active = FILTER_NAMES.filter((name) => name !== except && (filters[name]?.length ?? 0) > 0);
  const parts = active.map((name) => {
    values[name] = JSON.stringify(filters[name]);
    const wanted = `(SELECT value FROM json_each(@${name}))`;
    if (!TAGS.has(name)) return `d.${name} IN ${wanted}`;
    return `d.doc IN (SELECT doc FROM case_tag WHERE name = '${name}' AND value IN ${wanted})`;
  });
  return parts.length === 0 ? '1' : parts.join(' AND ');
}

export type PageOf = { match: MatchText; filters: SearchFilters; sort: SearchSort; take: number; after: { key: number | string; id: string } | null };

/** One page: rows (doc, id, score, month) in order, one more than asked for where there are more. */
export function pageStatement({ match, filters, sort, take, after }: PageOf): Statement {
  const byScore = sort === 'relevance' && match.must !== null;
  const found = foundRows(match, match.must !== null);
  const values: Statement['values'] = { ...found.values, take: take + 1 };
  const where = conditions(filters, values);
  const key = byScore ? 'f.score' : 'd.month';
  const down = byScore || sort !== 'oldest';
  let from = '1';
  if (after !== null) {
    Object.assign(values, { key: after.key, id: after.id });
    from = `(${key} ${down ? '<' : '>'} @key OR (${key} = @key AND d.id > @id))`;
  }
  const sql = `SELECT d.doc, d.id, f.score, d.month FROM (${found.sql}) f JOIN case_doc d ON d.doc = f.doc
    WHERE ${where} AND ${from} ORDER BY ${key} ${down ? 'DESC' : 'ASC'}, d.id LIMIT @take`;
  return { sql, values };
}

/** The score that a case has now: a page begins after it even where scores have moved since the page before. */
export function scoreStatement(match: MatchText, id: string): Statement {
  const found = foundRows(match, true);
  return { sql: `SELECT score FROM (${found.sql} AND rowid = (SELECT doc FROM case_doc WHERE id = @id))`, values: { ...found.values, id } };
}

/** One number: how many cases are found. */
export function totalStatement(match: MatchText, filters: SearchFilters): Statement {
  const found = foundRows(match, false);
  const values = { ...found.values };
  const where = conditions(filters, values);
  return { sql: `SELECT count(*) FROM (${found.sql}) f JOIN case_doc d ON d.doc = f.doc WHERE ${where}`, values };
}

/** Rows (name, value, cases) of every filter: how many of the found cases have each value. */
export function facetStatement(match: MatchText, filters: SearchFilters): Statement {
  const found = foundRows(match, false);
  const values = { ...found.values };
  const parts = FILTER_NAMES.map((name) => {
    const where = conditions(filters, values, name);
    const from = 'FROM found f CROSS JOIN case_doc d ON d.doc = f.doc';
    if (!TAGS.has(name)) return `SELECT '${name}' AS name, d.${name} AS value, count(*) AS cases ${from} WHERE ${where} GROUP BY d.${name}`;
    return `SELECT '${name}' AS name, t.value AS value, count(*) AS cases ${from} CROSS JOIN case_tag t ON t.doc = d.doc AND t.name = '${name}'
      WHERE ${where} GROUP BY t.value`;
  });
  return { sql: `WITH found AS MATERIALIZED (${found.sql}) ${parts.join(' UNION ALL ')}`, values };
}
