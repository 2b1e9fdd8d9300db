'use client';

import type { KeyboardEvent } from 'react';
import { nextPin } from '../../../../shared/domain/submission/next-pin';
import { type DraftReadingRow, SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { RemoveIcon } from '../../../_components/icons';
import { Field, Fault } from './field';
import { fieldId, useForm } from './form-context';
import { newRowKey } from './local-draft';

/** Readings pin by pin, folded away until they are wanted. */
export function ReadingRows() {
  const { document, update, announce, problems } = useForm();
  const rows = document.readings;
  const isFaulty = problems.some(({ field }) => field.startsWith('readings'));
  const add = () => {
    const last = rows.at(-1);
    const row = { key: newRowKey(), designator: last?.designator ?? '', pin: nextPin(last?.pin ?? ''), reading: '' };
    update((now) => ({ ...now, readings: [...now.readings, row] }));
    announce(`Row ${rows.length + 1} is added.`);
    // The row is drawn first.
    window.setTimeout(() => elementOf(`readings.${rows.length}.${row.pin === '' ? 'designator' : 'reading'}`)?.focus());
  };
  return (
    <details className="post-more" id={fieldId('readings')} open={rows.length > 0 || isFaulty || undefined}>
      <summary>Readings pin by pin{rows.length > 0 ? `: ${rows.length}` : ''}</summary>
      <p className="soft small">
        A state (high, low, pulsing, floating, or h, l, p, f) or a number with its unit. Enter goes on to the next pin.
      </p>
      <ol className="post-readings">
        {rows.map((row, i) => (
          <ReadingRow key={row.key} row={row} index={i} onEnter={i === rows.length - 1 ? add : null} />
        ))}
      </ol>
      <Fault field="readings" />
      {rows.length < SUBMISSION_LIMITS.readings ? (
        <button type="button" className="press press-small" onClick={add}>
          {rows.length === 0 ? 'Add a reading' : 'Next pin'}
        </button>
      ) : null}
    </details>
  );
}

const elementOf = (field: string) => window.document.getElementById(fieldId(field));

type ReadingRowProps = { row: DraftReadingRow; index: number; onEnter: (() => void) | null };

function ReadingRow({ row, index, onEnter }: ReadingRowProps) {
  const { update, announce } = useForm();
  const at = `readings.${index}`;
  const name = `${row.designator} ${row.pin}`.trim() || `row ${index + 1}`;
  const change = (over: Partial<DraftReadingRow>) =>
    update((now) => ({ ...now, readings: now.readings.map((other) => (other.key === row.key ? { ...other, ...over } : other)) }));
  const remove = () => {
    update((now) => ({ ...now, readings: now.readings.filter((other) => other.key !== row.key) }));
    announce(`${name} is removed.`);
    elementOf('readings')?.querySelector('summary')?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    if (onEnter) onEnter();
    else elementOf(`readings.${index + 1}.reading`)?.focus();
  };
  const input = { type: 'text', className: 'figure', autoComplete: 'off', onKeyDown } as const;
  return (
    <li className="post-reading" id={fieldId(at)}>
      <Field field={`${at}.designator`} label="Part">
        {(tie) => (
          <input
            {...tie}
            {...input}
            list="post-parts"
            autoCapitalize="characters"
            maxLength={SUBMISSION_LIMITS.short}
            value={row.designator}
            onChange={(e) => change({ designator: e.target.value })}
          />
        )}
      </Field>
      <Field field={`${at}.pin`} label="Pin">
        {(tie) => (
          <input
            {...tie}
            {...input}
            autoCapitalize="characters"
            maxLength={SUBMISSION_LIMITS.pin}
            value={row.pin}
            onChange={(e) => change({ pin: e.target.value })}
          />
        )}
      </Field>
      <Field field={`${at}.reading`} label="Reading">
        {(tie) => (
          <input
            {...tie}
            {...input}
            autoCapitalize="none"
            maxLength={SUBMISSION_LIMITS.short}
            value={row.reading}
            onChange={(e) => change({ reading: e.target.value })}
          />
        )}
      </Field>
      <button type="button" className="press press-small" aria-label={`Remove the reading at ${name}`} onClick={remove}>
        <RemoveIcon />
      </button>
    </li>
  );
}
