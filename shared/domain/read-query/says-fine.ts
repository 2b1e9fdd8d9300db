import type { ReadFinding } from '../../schemas/finding';
import { stateClassesOf } from './state-words';

/**
 * Whether the words of an absent symptom say that all is well with its subject ("picture fine", "sound is good"), and not only that
 * something is there ("has video", "not dead").
 */
export function saysFine({ kind, value, text }: Pick<ReadFinding, 'kind' | 'value' | 'text'>): boolean {
  if (kind !== 'symptom' || value !== 'absent') return false;
  return text.toLowerCase().split(/[^\p{L}.-]+/u).some((word) => stateClassesOf(word).includes('good'));
}
