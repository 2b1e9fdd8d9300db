import type { PhraseIndex } from './phrase-index';
import type { Token } from './token';

const REACH = 5;

/** "But" breaks a clause, except inside a phrase of the vocabulary that has one itself: "border but no text". */
export function joinContrasts(tokens: readonly Token[], index: PhraseIndex): Token[] {
  return tokens.map((token, at) => {
    if (token.word !== 'but' || token.role !== 'break') return token;
    const before = termsOf(tokens.slice(Math.max(0, at - REACH), at));
    const after = termsOf(tokens.slice(at + 1, at + 1 + REACH));
    const inside = index.contrasts.some((c) => c.before.every((t) => before.has(t)) && c.after.every((t) => after.has(t)));
    return inside ? { ...token, role: 'filler' } : token;
  });
}

function termsOf(tokens: readonly Token[]): Set<string> {
  return new Set(tokens.flatMap((t) => t.terms.map((w) => w.term)));
}
