import type { CaseContent, CaseStep } from '../../schemas/case';
import type { VocabularyWords } from '../casebook/vocabulary-words';

export type CheckStep = Extract<CaseStep, { kind: 'check' }>;
export type FixStep = Extract<CaseStep, { kind: 'fix' }>;

/** A step with its position. */
export type At<T> = T & { position: number };

/** The checks of a case, with their positions among all steps. */
export const checksOf = ({ steps }: CaseContent): At<CheckStep>[] =>
  steps.flatMap((step, position) => (step.kind === 'check' ? [{ ...step, position }] : []));

/** The attempts of a case, with their positions among all steps. */
export const fixesOf = ({ steps }: CaseContent): At<FixStep>[] =>
  steps.flatMap((step, position) => (step.kind === 'fix' ? [{ ...step, position }] : []));

/** The first attempt that cured, or undefined. */
export const cureOf = (content: CaseContent): At<FixStep> | undefined => fixesOf(content).find((step) => step.result === 'cured');

/** A label in quotation marks; the slug where the vocabulary does not know it. */
export function named(words: VocabularyWords, kind: 'symptoms' | 'checks' | 'causes' | 'fixes', slug: string): string {
  return `“${words[kind].get(slug)?.label ?? slug}”`;
}

/** The label of a check's outcome. */
export function outcomeNamed(words: VocabularyWords, { check, outcome }: Pick<CheckStep, 'check' | 'outcome'>): string {
  return `“${words.checks.get(check)?.outcomes.find((o) => o.slug === outcome)?.label ?? outcome}”`;
}

/** Several labels as one list. */
export const listed = (labels: string[]): string => labels.join(' and ');
