import { quoted, type TermGroup } from './expand-terms';

/** What the full text is asked for. */
export type MatchText = {
  /** Null: every case that is not excluded. */
  must: string | null;
  not: string | null;
  /** Any word that is asked for: what is marked in a text. Null where none is. */
  any: string | null;
  /** Pairs of words that stand side by side in the search: where they do so in a case, that counts too. */
  near: string[];
  /** Whether a beginning of a word is among what is asked for: FTS5 gathers all cases that it may stand in before it looks at any. */
  hasBeginning: boolean;
};

/** The terms as an expression of FTS5: `all` asks for every one of them, `some` for any. */
export function matchText(groups: readonly TermGroup[], matched: 'all' | 'some', pairs: readonly string[]): MatchText {
  const must = groups.filter((group) => !group.not).map(anyPhrase);
  const not = groups.filter((group) => group.not).map(anyPhrase);
  return {
    must: must.length === 0 ? null : must.join(matched === 'all' ? ' AND ' : ' OR '),
    not: not.length === 0 ? null : not.join(' OR '),
    any: must.length === 0 ? null : must.join(' OR '),
    near: pairs.map(quoted),
    hasBeginning: groups.some(({ prefix }) => prefix !== null),
  };
}

/** Whole expression for what is found and not excluded; `must` has to be there. */
export function wholeMatch({ must, not }: Pick<MatchText, 'must' | 'not'>): string {
  return not === null ? `${must}` : `(${must}) NOT (${not})`;
}

function anyPhrase({ phrases, prefix }: TermGroup): string {
  const parts = [...new Set(phrases)].map(quoted);
  if (prefix !== null) parts.push(`${quoted(prefix)} *`);
  return `(${parts.join(' OR ')})`;
}
