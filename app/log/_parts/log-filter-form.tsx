import Form from 'next/form';
import type { LogPage } from '../../../shared/schemas/log';

type LogFilterFormProps = { counts: LogPage<unknown>['counts']; kind: string | null; part: string | null };

/** Narrows the log to one kind of decision; a plain GET form. */
export function LogFilterForm({ counts, kind, part }: LogFilterFormProps) {
  return (
    <Form action="/log" className="ask device-filter" key={kind ?? ''}>
      {part === null ? null : <input type="hidden" name="part" value={part} />}
      <div className="ask-field">
        <label htmlFor="kind">Decisions</label>
        <select id="kind" name="kind" defaultValue={kind ?? ''}>
          <option value="">All ({counts.reduce((sum, { count }) => sum + count, 0)})</option>
          {counts.map((line) => (
            <option key={line.kind} value={line.kind}>
              {line.says} ({line.count})
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="press">
        Show
      </button>
    </Form>
  );
}
