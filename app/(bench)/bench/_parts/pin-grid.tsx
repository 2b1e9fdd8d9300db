'use client';

import { type KeyboardEvent, useId, useRef, useState } from 'react';
import type { JudgedPin } from '../../../../shared/domain/readings/judge-part';
import { packageLayout } from '../../../../shared/domain/readings/package-layout';
import type { Reading } from '../../../../shared/schemas/case';
import type { BoardPart } from '../../../../shared/schemas/device';
import { LOGIC_STATES } from '../../../../shared/schemas/terms';
import { capital } from '../../../_components/words';
import { readingWords } from './entry-words';
import { nextPin, pinAction, readPin, STATE_KEYS } from './pin-keys';
import { VERDICT_WORDS, VerdictMark } from './verdict-mark';

type PinReading = Pick<Reading, 'state' | 'value' | 'unit'>;

type PinGridProps = {
  part: BoardPart;
  /** What was read, by pin number. */
  readings: ReadonlyMap<string, PinReading>;
  verdicts: ReadonlyMap<string, JudgedPin>;
  /** What is usual at a pin, in words. */
  usual: (pin: string) => string;
  onRead: (pin: string, reading: PinReading | null) => void;
};

const SHORT: Record<string, string> = { high: 'H', low: 'L', pulsing: 'P', floating: 'F' };
const KEY_OF = Object.fromEntries(Object.entries(STATE_KEYS).map(([key, state]) => [state, key]));

/**
 * The pins of a part as they lie in its package. One pin is current; a key or a press of a button reads it and goes on
 * to the next by itself.
 */
export function PinGrid({ part, readings, verdicts, usual, onRead }: PinGridProps) {
  const id = useId();
  const layout = packageLayout(part);
  const [at, setAt] = useState(1);
  const [typed, setTyped] = useState('');
  const [told, setTold] = useState<string | null>(null);
  const number = useRef<HTMLInputElement>(null);
  const pinButton = (pin: number) => document.getElementById(`${id}-${pin}`);
  const go = (pin: number) => {
    setAt(pin);
    setTold(null);
    setTyped('');
    pinButton(pin)?.focus();
    pinButton(pin)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  const read = (reading: PinReading, focusGrid: boolean) => {
    onRead(String(at), reading);
    const next = nextPin(layout, at);
    if (focusGrid) return go(next);
    setAt(next);
    setTold(null);
    setTyped('');
    pinButton(next)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const action = pinAction(layout, at, event.key);
    if (action === null) return;
    event.preventDefault();
    if (action.kind === 'state') read({ state: action.state, value: null, unit: null }, true);
    else if (action.kind === 'go') go(action.pin);
    else if (action.kind === 'clear') onRead(String(at), null);
    else {
      setTyped(action.text);
      number.current?.focus();
    }
  };
  const enterNumber = () => {
    const reading = readPin(typed);
    if (reading === null) return setTold(`“${typed}” cannot be read. Write a number with its unit, such as 4.61V, 680 mV or 3.58MHz.`);
    read(reading, true);
  };
  const name = (pin: number) => part.pinNames[pin - 1] ?? '';
  const current = readings.get(String(at));
  return (
    <div className="pins">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys bubble up from the pins, which are buttons */}
      <div
        className={`pin-grid pin-grid-${layout.body}`}
        style={{ gridTemplateColumns: `repeat(${layout.columns}, minmax(0, 1fr))`, gridTemplateRows: `repeat(${layout.rows}, auto)` }}
        onKeyDown={onKeyDown}
      >
        {layout.pins.map(({ pin, row, column, side }) => {
          const reading = readings.get(String(pin));
          const judged = verdicts.get(String(pin));
          return (
            <button
              key={pin}
              id={`${id}-${pin}`}
              type="button"
              className={`pin pin-${side}`}
              style={{ gridRow: row + 1, gridColumn: column + 1 }}
              tabIndex={pin === at ? 0 : -1}
              aria-current={pin === at}
              aria-label={`Pin ${pin} ${name(pin)}: ${reading ? readingWords(reading) : 'not read'}${judged ? `, ${VERDICT_WORDS[judged.verdict]}` : ''}`}
              onFocus={() => setAt(pin)}
              onClick={() => go(pin)}
            >
              <span className="pin-number">{pin}</span>
              <span className="pin-name">{name(pin)}</span>
              <span className={reading?.value == null ? 'pin-reading' : 'pin-reading pin-number-read'}>
                {reading ? (SHORT[reading.state ?? ''] ?? readingWords(reading).replace(' ', '')) : '·'}
              </span>
              {judged ? <VerdictMark verdict={judged.verdict} /> : null}
              {judged && layout.body !== 'quad' ? <span className="pin-word">{judged.verdict === 'not-enough' ? 'few' : judged.verdict}</span> : null}
            </button>
          );
        })}
      </div>
      <div className="pin-panel">
        <p>
          <strong>
            Pin {at} of {part.pins} {name(at)}
          </strong>
          {current ? `: ${readingWords(current)}` : ''}
          <br />
          <span className="soft small">{usual(String(at))}</span>
        </p>
        <div className="pin-states">
          {LOGIC_STATES.map((state) => (
            <button key={state} type="button" className="press" onClick={() => read({ state, value: null, unit: null }, false)}>
              {capital(state)} <span className="pin-key" aria-hidden="true">{KEY_OF[state]}</span>
            </button>
          ))}
        </div>
        <div className="bench-number">
          <label htmlFor={`${id}-number`}>Number</label>
          <input
            ref={number}
            id={`${id}-number`}
            type="text"
            className="figure"
            autoComplete="off"
            maxLength={20}
            placeholder="4.61V"
            value={typed}
            aria-invalid={told !== null}
            aria-describedby={told ? `${id}-told` : undefined}
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') {
                event.preventDefault();
                if (typed.trim() === '') go(nextPin(layout, at));
                else enterNumber();
              } else if (event.key === 'Escape') go(at);
            }}
          />
          <button type="button" className="press" onClick={enterNumber}>
            Enter
          </button>
          <button type="button" className="press" onClick={() => setAt(nextPin(layout, at))}>
            Skip
          </button>
        </div>
        {told ? (
          <p id={`${id}-told`} className="bench-told" role="alert">
            {told}
          </p>
        ) : null}
      </div>
    </div>
  );
}
