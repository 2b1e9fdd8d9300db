import { stateClassesOf } from './state-words';
import type { Token } from './token';

const SINGLE = { negator: 0.55, state: 0.7, number: 0.4, small: 0.1 } as const;

/** What a token explains when read by itself, on the scale on which a telling word of a phrase counts 1. */
export function singleScore(token: Token): number {
  if (token.role === 'negator') return SINGLE.negator;
  if (token.role === 'number') return SINGLE.number;
  if (stateClassesOf(token.word).length === 0) return 0;
  return token.role === 'content' ? SINGLE.state : SINGLE.small;
}
