import type { Database } from 'better-sqlite3';
import { buildLexicon, type Lexicon } from '../../../shared/domain/read-query/lexicon';
import { stemOf } from '../../../shared/domain/read-query/spelling';
import { otherForms } from '../../../shared/domain/read-query/written-forms';
import type { SearchTerm } from '../../../shared/domain/search/parse-words';
import type { SearchResult } from '../../../shared/schemas/search';

/** What satisfies one term: any of these phrases; `prefix` may go on in its last word. */
export type TermGroup = { phrases: string[]; prefix: string | null; not: boolean };

export type Expansion = Pick<SearchResult, 'corrections' | 'unknown'> & {
  groups: TermGroup[];
  /** Words that stand side by side in the search. */
  pairs: string[];
};

/** Most words that a beginning is completed to, the commonest first. */
const COMPLETIONS = 12;
/** A word this many times rarer than one that a slip turns it into is searched for as both. */
const MUCH_RARER = 50;
/** Words that stand in more cases than this together are not looked for side by side. */
const PAIR_CASES = 10_000;
/** Share of the words that may come or go before the lists for corrections are made anew, where there are so many that this takes its time. */
const OTHER_WORDS = 0.002;
const MANY_WORDS = 10_000;
/** Fewest letters of a beginning that is completed. */
const PREFIX_LENGTH = 2;

/** Turns terms into what the index is asked for: other spellings, completions, and corrections of words that stand in no case. */
export function termExpander(file: Database) {
  const stands = file.prepare('SELECT 1 FROM case_text WHERE case_text MATCH ? LIMIT 1').pluck();
  const completed = file.prepare(`SELECT word FROM word WHERE word >= ? AND word < ? || char(1114111) ORDER BY cases DESC, word LIMIT ${COMPLETIONS}`).pluck();
  const casesOf = file.prepare('SELECT cases FROM word WHERE word = ?').pluck();
  const version = file.prepare("SELECT value FROM state WHERE name = 'state'").pluck();
  const wordCount = file.prepare('SELECT count(*) FROM word').pluck();
  const wordsOf = file.prepare('SELECT word, cases FROM word WHERE cases >= ?').raw();
  let kept: { version: unknown; words: number; all: Lexicon | null; common: Lexicon | null } | null = null;

  /** The words that stand in at least so many cases, for corrections; made anew when the index has other words by more than a few. */
  const lexiconOf = (which: 'all' | 'common'): Lexicon => {
    const now = version.get();
    if (kept === null || kept.version !== now) {
      const words = wordCount.get() as number;
      const isClose = kept !== null && words >= MANY_WORDS && Math.abs(words - kept.words) <= kept.words * OTHER_WORDS;
      kept = isClose && kept !== null ? { ...kept, version: now } : { version: now, words, all: null, common: null };
    }
    kept[which] ??= buildLexicon(closeTogether(wordsOf.all(which === 'all' ? 1 : MUCH_RARER) as [string, number][]));
    return kept[which];
  };
  const lexicon = () => lexiconOf('all');
  // The list of words knows most of them; the full text knows them in any inflection.
  const isThere = (phrase: string) => casesOf.get(phrase) !== undefined || stands.get(quoted(phrase)) !== undefined;

  const expand = (terms: readonly SearchTerm[]): Expansion => {
    const result: Expansion = { groups: [], pairs: [], corrections: [], unknown: [] };
    for (const term of terms.flatMap(apart)) {
      const group = expandTerm(term, result);
      if (group !== null) result.groups.push(group);
    }
    result.pairs = neighbours(terms, result.groups).filter(isCheap);
    return result;
  };

  /** Whether looking for words side by side takes no longer than the rest of a search does. */
  const isCheap = (pair: string) => pair.split(' ').reduce((sum, word) => sum + ((casesOf.get(word) as number | undefined) ?? 0), 0) <= PAIR_CASES;

  /** Words that are only joined by a mark ("line/output") are searched for one by one where they stand nowhere so. */
  const apart = (term: SearchTerm): SearchTerm[] => {
    const isJoined = term.words.length > 1 && !term.quoted && !term.not;
    if (!isJoined || isThere(term.words.join(' ')) || isThere(term.words.join(''))) return [term];
    return term.words.map((word, at) => ({ ...term, words: [word], open: term.open && at === term.words.length - 1 }));
  };

  const expandTerm = ({ words, quoted: isLiteral, not, open }: SearchTerm, told: Expansion): TermGroup | null => {
    const phrase = words.join(' ');
    const group: TermGroup = { phrases: [phrase], prefix: open && phrase.length >= PREFIX_LENGTH ? phrase : null, not };
    if (isLiteral) {
      // Quotes are taken at their word.
      if (!not && !isThere(phrase)) told.unknown.push(phrase);
      return group;
    }
    // The parts of a word with marks in it stand side by side, or the cases write it as one.
    if (words.length > 1) return isThere(phrase) || not ? group : { ...group, phrases: [words.join('')] };
    group.phrases.push(...otherForms(phrase));
    if (group.prefix !== null) complete(phrase, group);
    if (group.phrases.some(isThere) || (group.prefix !== null && stands.get(`${quoted(phrase)} *`) !== undefined)) {
      if (!not) addCommoner(phrase, group, told);
      return group;
    }
    return not ? null : meantWord(phrase, group, told);
  };

  /** Adds the words that begin so and that the beginning does not find by itself; where nothing but the word begins so, it is no beginning. */
  const complete = (start: string, group: TermGroup): void => {
    const words = completed.all(start, start) as string[];
    const own = stemOf(start);
    const others = words.filter((word) => word !== start && stemOf(word) !== own);
    if (others.length === 0 && words.includes(start)) group.prefix = null;
    const stems = new Map(others.filter((word) => !stemOf(word).startsWith(start)).map((word) => [stemOf(word), word]));
    group.phrases.push(...stems.values());
  };

  /** A rare word that is one slip from a common one may be that slip, made by whoever wrote the case and now again. */
  const addCommoner = (word: string, group: TermGroup, told: Expansion): void => {
    const cases = (casesOf.get(word) as number | undefined) ?? 0;
    if (cases === 0 || cases > 3) return;
    const meant = lexiconOf('common').correct(word);
    if (meant === null || meant === word || ((casesOf.get(meant) as number | undefined) ?? 0) < cases * MUCH_RARER) return;
    group.phrases.push(meant);
    told.corrections.push({ typed: word, meant });
  };

  const nearest = (word: string): string | null => {
    const meant = lexicon().correct(word);
    if (meant === null || isThere(meant)) return meant;
    // It went with the last case that had it.
    kept = null;
    return lexicon().correct(word);
  };

  const meantWord = (word: string, group: TermGroup, told: Expansion): TermGroup | null => {
    const split = lexicon().split(word)?.join(' ');
    const meant = split !== undefined && isThere(split) ? split : nearest(word);
    if (meant === null) {
      told.unknown.push(word);
      return null;
    }
    told.corrections.push({ typed: word, meant });
    return { phrases: [meant, ...(meant.includes(' ') ? [] : otherForms(meant))], prefix: null, not: group.not };
  };

  return expand;
}

/** Counts on a scale on which the lexicon still tells the commonest words apart. */
function closeTogether(words: readonly [string, number][]): Map<string, number> {
  const most = Math.log1p(words.reduce((max, [, cases]) => Math.max(max, cases), 1));
  return new Map(words.map(([word, cases]) => [word, (50 * Math.log1p(cases)) / most]));
}

function neighbours(terms: readonly SearchTerm[], groups: readonly TermGroup[]): string[] {
  const plain = groups.filter((group) => !group.not);
  if (plain.length !== terms.length) return [];
  return plain.slice(1).map((second, at) => `${plain[at]?.phrases[0]} ${second.phrases[0]}`);
}

/** A phrase as FTS5 takes it: nothing in it is an operator. */
export function quoted(phrase: string): string {
  return `"${phrase.replaceAll('"', '""')}"`;
}
