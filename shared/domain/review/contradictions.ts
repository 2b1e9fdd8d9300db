import type { CaseContent } from '../../schemas/case';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { afterCureContradictions } from './contradictions-order';
import { causeContradictions } from './contradictions-cause';
import { proofContradictions } from './contradictions-proof';
import { readingContradictions } from './contradictions-readings';

/** Two things in a case that do not go together; `field` is where a moderator would look first. */
export type Contradiction = { kind: ContradictionKind; field: string; sentence: string };

export const CONTRADICTION_KINDS = [
  'outcome-without-cure',
  'cure-without-outcome',
  'resolved-without-cause',
  'nothing-found-but-cured',
  'cure-elsewhere',
  'cause-cleared',
  'part-of-another-role',
  'symptom-hidden',
  'reading-against-outcome',
  'two-outcomes',
  'substitution-without-fix',
  'measurement-without-finding',
  'held-without-fix',
  'proved-by-working-outcome',
  'proof-after-cure',
  'fix-after-cure',
  'fault-after-cure',
] as const;
export type ContradictionKind = (typeof CONTRADICTION_KINDS)[number];

/** What a rule has to go by. */
export type ContradictionRule = (words: VocabularyWords, content: CaseContent) => Contradiction[];

const RULES: readonly ContradictionRule[] = [
  causeContradictions,
  readingContradictions,
  proofContradictions,
  afterCureContradictions,
];

/**
 * What in a case contradicts itself, or the vocabulary's own rules: each with a sentence for a moderator, none of them
 * proof that anything is wrong. Rules of our own; the fields are those of the form.
 */
export function contradictionsIn(words: VocabularyWords, content: CaseContent): Contradiction[] {
  return RULES.flatMap((rule) => rule(words, content));
}
