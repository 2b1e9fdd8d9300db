import { WORD_KINDS, type WordKind } from '../../../../shared/schemas/word-edit';

export const KINDS = WORD_KINDS;

export const KIND_WORDS: Record<WordKind, { one: string; many: string }> = {
  symptom: { one: 'symptom', many: 'Symptoms' },
  check: { one: 'check', many: 'Checks' },
  cause: { one: 'cause', many: 'Causes' },
  fix: { one: 'fix', many: 'Fixes' },
};
