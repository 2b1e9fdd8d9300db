'use client';

import { createContext, useContext } from 'react';
import type { VocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { BenchEntry, BenchUnit, EntryBody } from '../../../../shared/schemas/bench';
import type { Board } from '../../../../shared/schemas/device';

/** What every part of one unit's page works with. */
export type UnitParts = {
  unit: BenchUnit;
  /** Entries that stand, in order. */
  entries: readonly BenchEntry[];
  words: VocabularyWords;
  /** The board revision; null where only the model is known. */
  board: Board | null;
  /** Designators of the parts of a role on this board. */
  partsOf: (role: string) => string[];
  add: (bodies: readonly EntryBody[]) => void;
  change: (id: string, over: Partial<Pick<BenchEntry, 'body' | 'at'>>) => void;
  remove: (id: string) => void;
  /** Says something to whoever cannot see it happen. */
  say: (text: string) => void;
};

const context = createContext<UnitParts | null>(null);

export const UnitProvider = context.Provider;

/** The unit that this part belongs to. */
export function useUnit(): UnitParts {
  const parts = useContext(context);
  if (parts === null) throw new Error('A part of a bench log stands outside its unit.');
  return parts;
}
