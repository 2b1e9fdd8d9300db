import { checksOf, cureOf, fixesOf, named, outcomeNamed } from './case-parts';
import type { Contradiction, ContradictionRule } from './contradictions';

/** Putting another part in its place: what a proof by substitution needs. */
const SUBSTITUTES = new Set(['replace', 'swap-outside', 'recap']);

/** How the cause is said to have been proved, against what was done. */
export const proofContradictions: ContradictionRule = (words, content) => {
  const found: Contradiction[] = [];
  const add = (kind: Contradiction['kind'], field: string, sentence: string) => found.push({ kind, field, sentence });
  const fixes = fixesOf(content);
  const cure = cureOf(content);
  const helped = fixes.filter((step) => step.result === 'cured' || step.result === 'partly' || step.result === 'symptom-changed');
  const isSubstitute = (slug: string) => SUBSTITUTES.has(words.fixes.get(slug)?.action ?? '');
  const proving = content.provedByStep === null ? undefined : checksOf(content).find((s) => s.position === content.provedByStep);
  // A check can substitute, too: another part held on top, or the unit tried on another supply.
  if (content.proof === 'substitution' && !proving && !helped.some((step) => step.fixes.some(({ fix }) => isSubstitute(fix)))) {
    add('substitution-without-fix', 'proof', 'It is said to be proved by substitution, but no part was swapped with any effect.');
  }
  const unusual = checksOf(content).some((step) => words.checks.get(step.check)?.workingOutcome !== step.outcome);
  if (content.proof === 'measurement' && !unusual && content.readings.length === 0) {
    add('measurement-without-finding', 'proof', 'It is said to be proved by measurement, but no check in it showed anything unusual.');
  }
  if (content.proof === 'repair-held' && !cure) {
    add('held-without-fix', 'proof', 'It is said to be proved by the repair holding, but no attempt cured it.');
  }
  if (proving && words.checks.get(proving.check)?.workingOutcome === proving.outcome) {
    const what = `${named(words, 'checks', proving.check)} showed ${outcomeNamed(words, proving)}, as on a working unit`;
    add('proved-by-working-outcome', 'provedBy', `Step ${proving.position + 1} is said to have proved the cause, but ${what}.`);
  }
  if (proving && cure && proving.position > cure.position) {
    const order = `step ${proving.position + 1} comes after step ${cure.position + 1}, which had cured it`;
    add('proof-after-cure', 'provedBy', `The check that is said to have proved the cause is out of order: ${order}.`);
  }
  return found;
};
