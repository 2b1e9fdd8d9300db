import type { Finding } from '../../schemas/finding';
import type { ReaderContext } from './reader-context';
import type { Resolution } from './resolve-mention';
import type { Token } from './token';

const MOST_CHOICES = 4;

/**
 * What a single leftover word may mean: the symptom, if all phrases with this word name one symptom
 * and nothing else; the choices, if they name a few; null where it says too little.
 */
export function readLoneWord(token: Token, denied: boolean, context: ReaderContext): Resolution {
  const symptoms = new Set<string>();
  let others = 0;
  for (const { term, weight } of token.terms) {
    if (weight < 0.8) continue;
    for (const { phrase, slot } of context.index.postings.get(term) ?? []) {
      if (slot < 0 || phrase.required.length > 2) continue;
      for (const { target } of phrase.targets) {
        if (target.kind === 'symptom' && target.value === 'present') symptoms.add(target.id);
        else if (target.kind !== 'subject' && target.kind !== 'symptom') others += 1;
      }
    }
  }
  if (symptoms.size === 0 || symptoms.size > MOST_CHOICES || others > 0) return null;
  const value = denied ? 'absent' : 'present';
  const findings = [...symptoms].map((id): Finding => ({ kind: 'symptom', id, value }));
  return findings.length === 1 && isCharacteristic(token, findings[0] as Finding, context)
    ? { kind: 'finding', finding: findings[0] as Finding }
    : { kind: 'ambiguous', choices: findings };
}

/** True for a word that most phrases of the symptom contain: "grey" of the grey screen, but not "player" of missing sprites. */
function isCharacteristic(token: Token, finding: Finding, context: ReaderContext): boolean {
  return token.terms.some(({ term }) => context.index.characteristic.get(term)?.has(finding.id) === true);
}
