'use client';

import { useEffect, useRef } from 'react';
import type { FieldProblem } from '../../../../shared/schemas/submission';
import { FieldLinks } from './field-links';

type FaultSummaryProps = {
  problems: readonly FieldProblem[];
  /** What went wrong with none of the fields. */
  told: string | null;
  /** Counts the tries to send: each one brings the focus here. */
  tries: number;
};

/** Everything that is wrong, linked to where it is mended. */
export function FaultSummary({ problems, told, tries }: FaultSummaryProps) {
  const box = useRef<HTMLDivElement>(null);
  const isFaulty = problems.length > 0 || told !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a try to send moves the focus, not each key mended
  useEffect(() => {
    if (tries > 0 && isFaulty) box.current?.focus();
  }, [tries]);
  if (!isFaulty) return null;
  return (
    <div className="fault-summary" role="alert" tabIndex={-1} ref={box}>
      <strong>Nothing was sent yet{problems.length > 0 ? ': this needs another look' : ''}</strong>
      {told === null ? null : <p>{told}</p>}
      <FieldLinks places={problems} />
    </div>
  );
}
