import type { PhraseMatch } from './match-phrases';
import type { Target } from './phrase';
import type { PhraseIndex } from './phrase-index';
import { stateClassesOf } from './state-words';
import type { Token } from './token';

const MOST_ENTRIES = 3;
const WORDS_BETWEEN = 2;
/** Less than any phrase of two words in full, more than one of its words alone. */
const BLEND_SCORE = { one: 1.85, several: 1.7 } as const;

/**
 * Two neighbouring words that no phrase joins, but that both belong to one entry's phrases: "hangs at
 * the logo" from "hangs at boot" and "stuck at logo".
 */
export function blendPhrases(tokens: readonly Token[], from: number, to: number, index: PhraseIndex): PhraseMatch[] {
  const matches: PhraseMatch[] = [];
  for (let at = from; at < to; at += 1) {
    const token = tokens[at] as Token;
    if (token.role !== 'content' || stateClassesOf(token.word).length > 0) continue;
    const next = nextContent(tokens, at, to);
    if (next === null) continue;
    const shared = sharedTargets(token, tokens[next] as Token, index);
    if (shared.length === 0 || shared.length > MOST_ENTRIES) continue;
    const score = shared.length === 1 ? BLEND_SCORE.one : BLEND_SCORE.several;
    matches.push({
      from: at,
      to: next + 1,
      score,
      inner: [],
      missing: 0,
      targets: shared.map((target) => ({ target, quality: 1, sameWords: false })),
    });
  }
  return matches;
}

function nextContent(tokens: readonly Token[], at: number, to: number): number | null {
  for (let i = at + 1; i < Math.min(to, at + 2 + WORDS_BETWEEN); i += 1) {
    const role = (tokens[i] as Token).role;
    if (role === 'content') return stateClassesOf((tokens[i] as Token).word).length > 0 ? null : i;
    if (role !== 'filler' && role !== 'weak') return null;
  }
  return null;
}

function sharedTargets(a: Token, b: Token, index: PhraseIndex): Target[] {
  const inA = targetsOf(a, index);
  const inB = targetsOf(b, index);
  return [...inA].filter(([key]) => inB.has(key)).map(([, target]) => target);
}

function targetsOf(token: Token, index: PhraseIndex): ReadonlyMap<string, Target> {
  const found = new Map<string, Target>();
  for (const { term, weight } of token.terms) {
    if (weight < 0.8) continue;
    for (const [key, target] of index.entries.get(term) ?? []) found.set(key, target);
  }
  return found;
}
