import type { VocabularyWords } from '../casebook/vocabulary-words';
import { outcomeOfReading } from '../readings/outcome-of-reading';
import { type At, type CheckStep, checksOf, fixesOf, named, outcomeNamed } from './case-parts';
import type { Contradiction, ContradictionRule } from './contradictions';

/** Readings against the outcomes that their rules give them, and a check that showed two things at once. */
export const readingContradictions: ContradictionRule = (words, content) => {
  const checks = checksOf(content);
  const attempts = fixesOf(content).map((step) => step.position);
  return [...checks.flatMap((step) => againstRule(words, step)), ...twoOutcomes(words, checks, attempts)];
};

function againstRule(words: VocabularyWords, step: At<CheckStep>): Contradiction[] {
  const check = words.checks.get(step.check);
  if (!check || step.value === null) return [];
  const meant = outcomeOfReading(check, { value: step.value, unit: step.unit, resolution: resolutionOf(step.value) });
  if (meant === null || meant === step.outcome) return [];
  const sentence = `Step ${step.position + 1} reads ${step.value} ${step.unit}, which by the rule of ${named(words, 'checks', step.check)} is ${outcomeNamed(words, { check: step.check, outcome: meant })}; it says ${outcomeNamed(words, step)}.`;
  return [{ kind: 'reading-against-outcome', field: `steps.${step.position}`, sentence }];
}

/** Value of the last digit as it is written. */
function resolutionOf(value: number): number {
  const [, decimals = ''] = /\.(\d+)$/.exec(String(value)) ?? [];
  return 10 ** -decimals.length;
}

/** The same check at the same part, twice with nothing tried between. */
function twoOutcomes(words: VocabularyWords, checks: At<CheckStep>[], attempts: number[]): Contradiction[] {
  return checks.flatMap((step, i) => {
    const before = checks
      .slice(0, i)
      .findLast((other) => other.check === step.check && other.designator === step.designator && other.outcome !== step.outcome);
    if (!before || attempts.some((at) => at > before.position && at < step.position)) return [];
    const sentence = `Steps ${before.position + 1} and ${step.position + 1} are the same check with nothing tried between, and showed ${outcomeNamed(words, before)} and ${outcomeNamed(words, step)}.`;
    return [{ kind: 'two-outcomes', field: `steps.${step.position}`, sentence }];
  });
}
