'use client';

import { useState } from 'react';
import type { BenchEntry } from '../../../../shared/schemas/bench';
import { entryWords, timeWords } from './entry-words';
import { EntryEditor } from './entry-editor';
import { useUnit } from './unit-context';

/** One line of the log: an entry, or the readings of one part that were taken in a row. */
type Line = { key: string; first: BenchEntry; pins: BenchEntry[] };

/** The log in order of time, each entry to be changed or removed; readings of one part stand together. */
export function LogList() {
  const { entries } = useUnit();
  const [open, setOpen] = useState<string | null>(null);
  if (entries.length === 0) return <p className="soft">Nothing is entered yet. Begin with what you see.</p>;
  return (
    <ol className="timeline log-list" aria-label="The log">
      {linesOf(entries).map(({ key, first, pins }, i) => (
        <li key={key}>
          <span className="step-number">{i + 1}</span>
          {pins.length > 0 ? <PinLine first={first} pins={pins} /> : <EntryLine entry={first} open={open === key} onOpen={(on) => setOpen(on ? key : null)} />}
        </li>
      ))}
    </ol>
  );
}

function EntryLine({ entry, open, onOpen }: { entry: BenchEntry; open: boolean; onOpen: (open: boolean) => void }) {
  const { words } = useUnit();
  const { kind, about, says } = entryWords(words, entry.body);
  return (
    <>
      <div className="log-line">
        <p>
          <span className="soft small">
            <time dateTime={new Date(entry.at).toISOString()}>{timeWords(entry.at)}</time> · {kind}
          </span>
          <br />
          {about}
          {says ? (
            <>
              : <strong>{says}</strong>
            </>
          ) : null}
        </p>
        <button type="button" className="press press-small no-print" aria-expanded={open} onClick={() => onOpen(!open)}>
          {open ? 'Close' : 'Change'}
          <span className="sr-only">: {about}</span>
        </button>
      </div>
      {open ? <EntryEditor entry={entry} onDone={() => onOpen(false)} /> : null}
    </>
  );
}

function PinLine({ first, pins }: { first: BenchEntry; pins: BenchEntry[] }) {
  const { words } = useUnit();
  const designator = first.body.kind === 'pin' ? first.body.reading.designator : '';
  return (
    <details className="log-pins">
      <summary>
        <span className="soft small">
          <time dateTime={new Date(first.at).toISOString()}>{timeWords(first.at)}</time> · Readings
        </span>
        <br />
        {designator}: <strong>{pins.length === 1 ? '1 pin' : `${pins.length} pins`}</strong>
      </summary>
      <p className="figure log-pin-list">
        {pins.map(({ id, body }) => (
          <span key={id}>
            {body.kind === 'pin' ? body.reading.pin : ''} {entryWords(words, body).says}
          </span>
        ))}
      </p>
    </details>
  );
}

function linesOf(entries: readonly BenchEntry[]): Line[] {
  const lines: Line[] = [];
  for (const entry of entries) {
    const before = lines.at(-1);
    const { body } = entry;
    const first = before?.first.body;
    if (body.kind !== 'pin') lines.push({ key: entry.id, first: entry, pins: [] });
    else if (before && first?.kind === 'pin' && first.reading.designator === body.reading.designator) before.pins.push(entry);
    else lines.push({ key: entry.id, first: entry, pins: [entry] });
  }
  return lines;
}
