'use client';

import { createContext, useContext } from 'react';
import type { VocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { AskedChange } from '../../../../shared/domain/submission/asked-in-form';
import type { DraftDocument, FieldProblem } from '../../../../shared/schemas/submission';

/** What every part of the form works with. */
export type FormParts = {
  document: DraftDocument;
  update: (change: (now: DraftDocument) => DraftDocument) => void;
  words: VocabularyWords;
  problems: readonly FieldProblem[];
  /** What a moderator asked to have changed, each at the place it has now. */
  asked: readonly AskedChange[];
  /** Says something to whoever cannot see it happen. */
  announce: (text: string) => void;
};

const context = createContext<FormParts | null>(null);

export const FormProvider = context.Provider;

/** The form that this part belongs to. */
export function useForm(): FormParts {
  const parts = useContext(context);
  if (parts === null) throw new Error('A part of the form stands outside it.');
  return parts;
}

/** Id of the element of a field, from its path. */
export const fieldId = (field: string): string => `post-${field.replaceAll('.', '-')}`;
