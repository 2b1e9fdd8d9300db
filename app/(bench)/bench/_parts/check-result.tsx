'use client';

import { useId, useState } from 'react';
import { readNumber } from '../../../../shared/domain/submission/read-number';
import type { Check } from '../../../../shared/schemas/vocabulary';

type CheckResultProps = {
  check: Check;
  /** Chance of each outcome, where it is known. */
  chances?: ReadonlyMap<string, string>;
  onShown: (outcome: string, reading: string) => void;
};

/** What a check showed: one press for an outcome, or the number as the meter has it. */
export function CheckResult({ check, chances, onShown }: CheckResultProps) {
  const id = useId();
  const [text, setText] = useState('');
  const [told, setTold] = useState<string | null>(null);
  const enter = () => {
    const number = readNumber(text, check.rule);
    if (number.outcome === null) return setTold(number.reason ?? 'This number decides nothing here: press what it showed.');
    setText('');
    setTold(null);
    onShown(number.outcome, text.trim());
  };
  return (
    <div className="bench-result">
      {check.rule ? (
        <div className="bench-number">
          <label htmlFor={id}>Number, in {check.rule.unit}</label>
          <input
            id={id}
            type="text"
            className="figure"
            autoComplete="off"
            maxLength={40}
            value={text}
            aria-describedby={told ? `${id}-told` : undefined}
            aria-invalid={told !== null}
            onChange={(event) => setText(event.target.value)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return;
              event.preventDefault();
              enter();
            }}
          />
          <button type="button" className="press" onClick={enter}>
            Enter<span className="sr-only"> the number for {check.label}</span>
          </button>
          {told ? (
            <p id={`${id}-told`} className="bench-told" role="alert">
              {told}
            </p>
          ) : null}
        </div>
      ) : null}
      <div className="bench-choices">
        {check.outcomes.map((outcome) => (
          <button
            key={outcome.slug}
            type="button"
            className="press"
            aria-label={`${check.label}: ${outcome.label}`}
            onClick={() => onShown(outcome.slug, text.trim())}
          >
            {outcome.label}
            {chances?.has(outcome.slug) ? <span className="soft small">{chances.get(outcome.slug)}</span> : null}
          </button>
        ))}
      </div>
    </div>
  );
}
