import type { Modifier } from './mention';
import type { PhraseIndex } from './phrase-index';
import type { Token } from './token';

/**
 * Checks that are named by other words than those used, but know both the thing and the outcome:
 * "5 V rail shorted" is no outcome of the rail's voltage, yet the check of the rails' resistance
 * speaks of rails and has an outcome "shorted". `things` are the tokens that name the thing.
 */
export function relatedChecks(things: readonly Token[], state: Modifier, index: PhraseIndex): string[] {
  const telling = things.filter((t) => t.role === 'content' || t.role === 'number' || t.role === 'weak');
  if (telling.length === 0 || state.outcomes.size === 0) return [];
  const counted = [...state.outcomes.keys()].map((check) => ({
    check,
    count: Math.min(...telling.map((token) => timesNamed(check, token, index))),
  }));
  const most = Math.max(0, ...counted.map((c) => c.count));
  return most === 0 ? [] : counted.filter((c) => c.count === most).map((c) => c.check);
}

/** How many of a check's phrases have the token. */
function timesNamed(check: string, token: Token, index: PhraseIndex): number {
  const phrases = token.terms.flatMap(({ term }) => index.postings.get(term) ?? []);
  return phrases.filter(({ phrase }) => phrase.targets.some(({ target }) => target.kind === 'check' && target.id === check))
    .length;
}
