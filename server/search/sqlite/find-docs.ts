import type { Database } from 'better-sqlite3';
import { FIELD_WEIGHTS, SEARCH_FIELDS } from '../../../shared/domain/search/search-document';
import type { CaseColumns } from './case-columns';
import type { TermGroup } from './expand-terms';
import { pageMarker, SNIPPET_WORDS, snippetOf } from './mark-page';
import { type MatchText, matchText, wholeMatch } from './match-text';
import type { Found } from './narrow-found';

/** Where fewer cases than these have all the words, those with some of them are listed too. */
const FEW = 20;
/**
 * A case with all the words scores so many times as much there. They do not simply come first: in a long text the words may
 * stand by chance, while a case that lacks "after" has the very symptom.
 */
const ALL_WORDS = 1.25;
/** What each pair of words that stand side by side in a case as they do in the search adds to its score, as a share of it. */
const SIDE_BY_SIDE = 0.3;
/** Where more cases than these are found by a beginning of a word, walking over them once more for the snippets costs more than marking the page apart. */
const MANY = 600;

const WEIGHTS = SEARCH_FIELDS.map((field) => FIELD_WEIGHTS[field]).join(', ');
const NARRATIVE = SEARCH_FIELDS.indexOf('narrative');

export type FoundDocs = { found: Found; matched: 'all' | 'some'; match: MatchText };

/** Asks the full text; statements are prepared once. */
export function docFinder(file: Database) {
  // FTS5's own sign is the other way round.
  const scored = file.prepare(`SELECT rowid, -bm25(case_text, ${WEIGHTS}) FROM case_text WHERE case_text MATCH ?`).raw();
  const matching = file.prepare('SELECT rowid FROM case_text WHERE case_text MATCH ?').pluck();
  // The plus keeps SQLite from asking the full text once per case.
  const marked = file
    .prepare(`SELECT rowid, ${snippetOf('case_text', NARRATIVE)} FROM case_text WHERE case_text MATCH ? AND +rowid IN (SELECT value FROM json_each(?))`)
    .raw();
  const markedOne = file.prepare(`SELECT ${snippetOf('case_text', NARRATIVE)} FROM case_text WHERE case_text MATCH ? AND rowid = ?`).pluck();
  const page = pageMarker();
  const text = file.prepare('SELECT narrative FROM case_text WHERE rowid = ?').pluck();

  const scoresOf = (match: MatchText): { docs: number[]; scores: number[] } => {
    const rows = scored.all(wholeMatch(match)) as [number, number][];
    const docs: number[] = [];
    const scores: number[] = [];
    for (const row of rows) {
      docs.push(row[0]);
      scores.push(row[1]);
    }
    const pairs = new Map<number, number>();
    for (const pair of rows.length < 2 ? [] : match.near) for (const doc of matching.all(pair) as number[]) pairs.set(doc, (pairs.get(doc) ?? 0) + 1);
    if (pairs.size > 0) docs.forEach((doc, i) => {
      scores[i] = (scores[i] as number) * (1 + SIDE_BY_SIDE * (pairs.get(doc) ?? 0));
    });
    return { docs, scores };
  };

  /** Every case that is found: those with all the words, alone unless there are few. */
  const find = (groups: readonly TermGroup[], pairs: readonly string[], columns: CaseColumns): FoundDocs => {
    const match = matchText(groups, 'all', pairs);
    if (match.must === null) return { found: { docs: allBut(columns, match.not === null ? [] : (matching.all(match.not) as number[])), scores: null }, matched: 'all', match };
    const found = scoresOf(match);
    if (found.docs.length >= FEW || groups.filter((group) => !group.not).length < 2) return { found, matched: 'all', match };
    const wider = matchText(groups, 'some', pairs);
    const some = scoresOf(wider);
    const best = new Set(found.docs);
    const scores = some.scores.map((score, i) => (best.has(some.docs[i] as number) ? score * ALL_WORDS : score));
    return { found: { docs: some.docs, scores }, matched: 'some', match: wider };
  };

  /** FTS5 goes straight to a row whose number comes as a whole number; to one that comes as a fraction, as plain numbers do, it walks. */
  const markedIn = (doc: number, whole: string) => String(markedOne.get(whole, BigInt(doc)) ?? '');

  /** Narratives by number: where words were asked for the stretch around them, marked. */
  const snippets = ({ match, found }: FoundDocs, docs: readonly number[]): Map<number, string> => {
    if (match.must !== null && !match.hasBeginning) return new Map(docs.map((doc) => [doc, markedIn(doc, wholeMatch(match))]));
    if (match.must !== null && found.docs.length <= MANY) return new Map(marked.all(wholeMatch(match), JSON.stringify(docs)) as [number, string][]);
    const texts = new Map(docs.map((doc) => [doc, String(text.get(doc) ?? '')]));
    const stretches = match.any === null ? new Map<number, string>() : page.mark(texts, match.any);
    return new Map(docs.map((doc) => [doc, stretches.get(doc) ?? beginningOf(texts.get(doc) ?? '')]));
  };

  return { find, snippets, close: page.close };
}

function allBut({ places, gone }: CaseColumns, left: readonly number[]): number[] {
  const out = new Set(left);
  const docs: number[] = [];
  for (let place = 0; place < places; place += 1) if (gone[place] === 0 && !out.has(place * 2)) docs.push(place * 2);
  return docs;
}

/** The first words of a text. */
function beginningOf(text: string): string {
  const words = text.trim().split(/\s+/);
  return words.length <= SNIPPET_WORDS ? text : `${words.slice(0, SNIPPET_WORDS).join(' ')}…`;
}
