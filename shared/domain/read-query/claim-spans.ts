import { stateClassesOf } from './state-words';
import type { Token } from './token';

/** What became of a token: which reading claimed it (index), or none. */
export type Claims = (number | null)[];

/** Half-open character range. */
export type Span = { start: number; end: number };

/**
 * The span of a reading: its own words, widened over its states as long as only words without a
 * meaning of their own, or its own, lie between. Spans of different readings so never overlap.
 */
export function spanOf(
  core: { from: number; to: number },
  own: readonly number[],
  owner: number,
  claims: Claims,
  tokens: readonly Token[],
): Span {
  let { from, to } = core;
  const free = (at: number) => claims[at] === owner || (claims[at] === null && isPassable(tokens[at] as Token));
  for (const at of [...own].sort((a, b) => distanceTo(a, core) - distanceTo(b, core))) {
    if (at < from && range(at, from).every(free)) from = at;
    if (at >= to && range(to, at + 1).every(free)) to = at + 1;
  }
  return { start: (tokens[from] as Token).start, end: (tokens[to - 1] as Token).end };
}

function distanceTo(at: number, core: { from: number; to: number }): number {
  return at < core.from ? core.from - at : at - core.to;
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);
}

/** Words that a span may run over without hiding anything. */
function isPassable(token: Token): boolean {
  return token.role === 'filler' || token.role === 'weak' || token.role === 'joiner' || token.role === 'negator';
}

/** Runs of content words that nothing claimed, with a "not" right before them. */
export function unreadRuns(tokens: readonly Token[], claims: Claims, spans: readonly Span[]): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  const covered = tokens.map((t) => spans.some((s) => t.start >= s.start && t.end <= s.end));
  for (const [at, token] of tokens.entries()) {
    if (claims[at] !== null || covered[at] || !needsReading(token, at, tokens, claims)) continue;
    const last = runs.at(-1);
    const denied = at > 0 && (tokens[at - 1] as Token).role === 'negator' && claims[at - 1] === null && !covered[at - 1];
    if (last !== undefined && last.to === at - (denied ? 1 : 0)) last.to = at + 1;
    else runs.push({ from: denied ? at - 1 : at, to: at + 1 });
  }
  return runs;
}

/** Verbs that only say that a part was put in: the fix is read from its neighbours. */
const PLACING_WORDS: ReadonlySet<string> = new Set([
  'fitted',
  'fit',
  'installed',
  'refitted',
  'soldered',
  'tried',
  'swapped',
  'replaced',
]);

/** True for a word that must not be passed over: it means something, or nobody knows that it does not. */
export function isContent(token: Token): boolean {
  return token.role === 'content' || token.role === 'number';
}

function needsReading(token: Token, at: number, tokens: readonly Token[], claims: Claims): boolean {
  if (
    PLACING_WORDS.has(token.word) &&
    [at - 2, at - 1, at + 1, at + 2].some((i) => claims[i] !== null && claims[i] !== undefined)
  )
    return false;
  if (isContent(token)) return true;
  if (token.role === 'filler') return stateClassesOf(token.word).length > 0;
  if (token.role !== 'weak') return false;
  const beside = (i: number) => claims[i] !== null && claims[i] !== undefined;
  return (
    !beside(at - 1) &&
    !beside(at + 1) &&
    !(isSmall(tokens[at - 1]) && beside(at - 2)) &&
    !(isSmall(tokens[at + 1]) && beside(at + 2))
  );
}

function isSmall(token: Token | undefined): boolean {
  return token !== undefined && (token.role === 'filler' || token.role === 'weak' || token.role === 'negator');
}
