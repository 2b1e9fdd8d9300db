import { quoted, type TermGroup } from './expand-terms';

/** What the full text is asked for. */
export type MatchText = {
  /** Null: every case that is not excluded. */
  must: string | null;
  not: string | null;
  /** Cases that stand before all others; null where none do. */
  best: string | null;
};

/** The terms as an expression of FTS5: `all` asks for every one of them; `some` for any, with those that have all of them first. */
export function matchText(groups: readonly TermGroup[], matched: 'all' | 'some'): MatchText {
  const must = groups.filter((group) => !group.not).map(anyPhrase);
  const not = groups.filter((group) => group.not).map(anyPhrase);
  return {
    must: must.length === 0 ? null : must.join(matched === 'all' ? ' AND ' : ' OR '),
    not: not.length === 0 ? null : not.join(' OR '),
    best: matched === 'some' ? must.join(' AND ') : null,
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
