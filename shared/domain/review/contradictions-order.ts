import { checksOf, cureOf, fixesOf, named, outcomeNamed } from './case-parts';
import type { Contradiction, ContradictionRule } from './contradictions';

/** What comes after the fix that is said to have cured it. */
export const afterCureContradictions: ContradictionRule = (words, content) => {
  const cure = cureOf(content);
  if (!cure) return [];
  const found: Contradiction[] = [];
  const later = fixesOf(content).find((step) => step.position > cure.position);
  if (later) {
    const sentence = `Step ${cure.position + 1} cured it, but step ${later.position + 1} goes on to try another fix.`;
    found.push({ kind: 'fix-after-cure', field: `steps.${later.position}`, sentence });
  }
  const end = later?.position ?? content.steps.length;
  for (const step of checksOf(content)) {
    if (step.position < cure.position || step.position > end) continue;
    if (words.checks.get(step.check)?.workingOutcome === step.outcome) continue;
    const what = `${named(words, 'checks', step.check)} still showed ${outcomeNamed(words, step)}`;
    const sentence = `Step ${cure.position + 1} cured it, but in step ${step.position + 1} ${what}.`;
    found.push({ kind: 'fault-after-cure', field: `steps.${step.position}`, sentence });
  }
  return found;
};
