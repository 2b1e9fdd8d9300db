'use client';

import { useId, useState } from 'react';
import { FIX_RESULTS, type FixResult as Result } from '../../../../shared/schemas/case';
import { capital, FIX_RESULT_WORDS } from '../../../_components/words';

type FixResultProps = { label: string; parts: readonly string[]; onDone: (result: Result, designator: string) => void };

/** What a fix changed, and at which part. */
export function FixResult({ label, parts, onDone }: FixResultProps) {
  const id = useId();
  const [part, setPart] = useState(parts.length === 1 ? (parts[0] ?? '') : '');
  return (
    <div className="bench-result">
      {parts.length > 0 ? (
        <div className="bench-number">
          <label htmlFor={id}>Part</label>
          <select id={id} value={part} onChange={(event) => setPart(event.target.value)}>
            <option value="">Not said</option>
            {parts.map((designator) => (
              <option key={designator}>{designator}</option>
            ))}
          </select>
        </div>
      ) : null}
      <div className="bench-choices">
        {FIX_RESULTS.map((result) => (
          <button
            key={result}
            type="button"
            className="press"
            aria-label={`${label}: ${FIX_RESULT_WORDS[result]}`}
            onClick={() => onDone(result, part)}
          >
            {capital(FIX_RESULT_WORDS[result])}
          </button>
        ))}
      </div>
    </div>
  );
}
