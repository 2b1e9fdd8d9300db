'use client';

import { useId } from 'react';
import { type FixResult, FIX_RESULTS } from '../../../../shared/schemas/case';
import type { BenchEntry, EntryBody } from '../../../../shared/schemas/bench';
import { capital, FIX_RESULT_WORDS } from '../../../_components/words';
import { entryWords } from './entry-words';
import { useUnit } from './unit-context';

/** Changes an entry, its time, or takes it out. Every change is kept at once and can be undone. */
export function EntryEditor({ entry, onDone }: { entry: BenchEntry; onDone: () => void }) {
  const { words, change, remove, say } = useUnit();
  const id = useId();
  const { about } = entryWords(words, entry.body);
  return (
    <div className="entry-editor">
      <BodyFields id={id} body={entry.body} onChange={(body) => change(entry.id, { body })} />
      <div className="bench-field">
        <label htmlFor={`${id}-at`}>When</label>
        <input
          id={`${id}-at`}
          type="datetime-local"
          value={localTime(entry.at)}
          onChange={(event) => {
            const at = new Date(event.target.value).getTime();
            if (Number.isFinite(at) && at >= 0) change(entry.id, { at });
          }}
        />
      </div>
      <button
        type="button"
        className="press press-small"
        onClick={() => {
          remove(entry.id);
          say(`${about} is removed. Undo brings it back.`);
          onDone();
        }}
      >
        Remove<span className="sr-only">: {about}</span>
      </button>
    </div>
  );
}

type FieldsProps = { id: string; body: EntryBody; onChange: (body: EntryBody) => void };

function BodyFields({ id, body, onChange }: FieldsProps) {
  const { words } = useUnit();
  if (body.kind === 'note') {
    return (
      <div className="bench-field">
        <label htmlFor={id}>Note</label>
        <textarea id={id} rows={3} maxLength={2000} value={body.text} onChange={(e) => onChange({ ...body, text: e.target.value })} />
      </div>
    );
  }
  if (body.kind === 'soak') {
    return (
      <div className="bench-field">
        <label htmlFor={id}>Minutes</label>
        <input id={id} type="number" min={0} max={100000} value={body.minutes} onChange={(e) => onChange({ ...body, minutes: Math.max(0, Math.round(Number(e.target.value))) })} />
      </div>
    );
  }
  const choice = choiceOf(words.checks, body);
  if (choice === null) return null;
  return (
    <div className="bench-field">
      <label htmlFor={id}>It is</label>
      <select id={id} value={choice.value} onChange={(e) => onChange(choice.with(e.target.value))}>
        {choice.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}

type Choice = { value: string; options: { value: string; label: string }[]; with: (value: string) => EntryBody };

function choiceOf(checks: ReturnType<typeof useUnit>['words']['checks'], body: EntryBody): Choice | null {
  const either = (yes: string, no: string) => [
    { value: 'yes', label: yes },
    { value: 'no', label: no },
  ];
  if (body.kind === 'symptom') {
    return { value: body.present ? 'yes' : 'no', options: either('Present', 'Absent'), with: (v) => ({ ...body, present: v === 'yes' }) };
  }
  if (body.kind === 'after') {
    return { value: body.passed ? 'yes' : 'no', options: either('Passed', 'Not passed'), with: (v) => ({ ...body, passed: v === 'yes' }) };
  }
  if (body.kind === 'fix') {
    const options = FIX_RESULTS.map((value) => ({ value, label: capital(FIX_RESULT_WORDS[value]) }));
    return { value: body.result, options, with: (v) => ({ ...body, result: v as FixResult }) };
  }
  if (body.kind !== 'check') return null;
  const options = (checks.get(body.check)?.outcomes ?? []).map((o) => ({ value: o.slug, label: o.label }));
  // A number that no longer fits what it showed would contradict it.
  return { value: body.outcome, options, with: (v) => ({ ...body, outcome: v, reading: '' }) };
}

/** A moment as a field for date and time takes it, in the time zone of the bench. */
function localTime(at: number): string {
  const shifted = at - new Date(at).getTimezoneOffset() * 60_000;
  return new Date(shifted).toISOString().slice(0, 16);
}
