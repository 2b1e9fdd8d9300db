'use client';

import type { VocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { BenchUnit } from '../../../../shared/schemas/bench';
import { timeWords } from './entry-words';

type UnitListProps = { units: readonly BenchUnit[]; words: VocabularyWords; open: string | null; onOpen: (id: string) => void };

/** The units on the bench, those still open first; one press opens one. */
export function UnitList({ units, words, open, onOpen }: UnitListProps) {
  if (units.length === 0) return null;
  const inOrder = [...units].sort((a, b) => Number(a.closedAt !== null) - Number(b.closedAt !== null) || b.at - a.at);
  return (
    <nav className="unit-list no-print" aria-label="Units on the bench">
      <ul>
        {inOrder.map((unit) => (
          <li key={unit.id}>
            <button type="button" className="press" aria-current={unit.id === open} onClick={() => onOpen(unit.id)}>
              <span>
                {words.devices.get(unit.device)?.label ?? unit.device}
                {unit.label ? `, ${unit.label}` : ''}
                <br />
                <span className="small">
                  {timeWords(unit.at)}
                  {unit.working ? ' · working unit' : ''}
                  {unit.closedAt === null ? '' : ' · put away'}
                </span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
