import type { Mention } from './mention';
import type { PhraseIndex } from './phrase-index';
import type { Token } from './token';

/**
 * The outcome that a bare check's own words already say: "heater glowing", "hot vram", "short between
 * 5 V and ground" are names of checks in which one word is also the name of an outcome. Null where none is.
 */
export function ownOutcome(check: string, mention: Mention, tokens: readonly Token[], index: PhraseIndex): string | null {
  for (let at = mention.piece.to - 1; at >= mention.piece.from; at -= 1) {
    const token = tokens[at] as Token;
    if (token.role !== 'content' || mention.piece.to - mention.piece.from < 2) continue;
    for (const { term } of token.terms) {
      for (const { phrase } of index.postings.get(term) ?? []) {
        if (phrase.required.length !== 1) continue;
        for (const { target } of phrase.targets) if (target.kind === 'outcome' && target.check === check) return target.outcome;
      }
    }
  }
  return null;
}
