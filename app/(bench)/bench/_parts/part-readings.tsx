'use client';

import { useMemo, useState } from 'react';
import { pinReadings } from '../../../../shared/domain/bench/bench-log';
import { judgePart, type KnownPart } from '../../../../shared/domain/readings/judge-part';
import { logicFamilyOf } from '../../../../shared/domain/readings/logic-family';
import type { Reading } from '../../../../shared/schemas/case';
import type { BoardPart } from '../../../../shared/schemas/device';
import type { Hazard } from '../../../../shared/schemas/terms';
import { formatDecibans } from '../../../_components/format-figures';
import { StepCautions, useCautions } from './session-cautions';
import { PinGrid } from './pin-grid';
import { useUnit } from './unit-context';
import type { DeviceData } from './use-words';
import { usualWords, verdictReason } from './usual-words';
import { VERDICT_WORDS, VerdictMark } from './verdict-mark';

/** Readings at the pins of a part, and whether they are usual. */
export function PartReadings({ data }: { data: DeviceData }) {
  const { unit, board, words, entries } = useUnit();
  const [designator, setDesignator] = useState('');
  const read = pinReadings(entries);
  const hazards = hazardsOf(words.devices.get(unit.device)?.model.category);
  const fullOf = useCautions([{ key: 'readings', cautions: hazards }]);
  if (board === null) return <p className="soft">Choose the board revision of this unit to take readings: pins belong to a board.</p>;
  const part = board.parts.find((p) => p.designator === designator);
  const known = new Map(data.working.map((p) => [p.designator, p.units]));
  const label = (p: BoardPart) =>
    `${p.designator} ${words.roles.get(p.role)?.label ?? p.role}${p.partNumber ? `, ${p.partNumber}` : ''} (${p.package} ${p.pins}${known.has(p.designator) ? `; ${known.get(p.designator)} working` : ''})`;
  return (
    <>
      <StepCautions hazards={hazards} full={fullOf('readings')} />
      <div className="bench-field">
        <label htmlFor="bench-part">Part on the board</label>
        <select id="bench-part" value={designator} onChange={(event) => setDesignator(event.target.value)}>
          <option value="">Choose a part</option>
          {board.parts.map((p) => (
            <option key={p.designator} value={p.designator}>
              {label(p)}
            </option>
          ))}
        </select>
      </div>
      {read.length > 0 ? (
        <p className="soft small">Read so far: {[...new Set(read.map((r) => r.designator))].map((d) => `${d} ${read.filter((r) => r.designator === d).length}`).join(', ')}</p>
      ) : null}
      {part ? <OnePart key={part.designator} part={part} data={data} readings={read.filter((r) => r.designator === part.designator)} /> : null}
    </>
  );
}

/** Probing is done with power on. Common practice, no source. */
function hazardsOf(category: string | undefined): Hazard[] {
  return category === 'monitor' ? ['mains', 'high-voltage', 'stored-charge'] : ['static'];
}

function OnePart({ part, data, readings }: { part: BoardPart; data: DeviceData; readings: readonly Reading[] }) {
  const { add, change, remove, entries } = useUnit();
  const known: KnownPart = useMemo(
    () => ({
      working: data.working.find((p) => p.designator === part.designator) ?? null,
      faulty: data.faulty.find((p) => p.designator === part.designator) ?? null,
    }),
    [data, part],
  );
  const judged = useMemo(() => judgePart(part, known, readings), [part, known, readings]);
  const verdicts = new Map(judged.pins.map((pin) => [pin.pin, pin]));
  const onRead = (pin: string, reading: Pick<Reading, 'state' | 'value' | 'unit'> | null) => {
    const before = entries.findLast(({ body }) => body.kind === 'pin' && body.reading.designator === part.designator && body.reading.pin === pin);
    if (reading === null) return before && remove(before.id);
    const body = { kind: 'pin' as const, reading: { designator: part.designator, pin, ...reading } };
    if (before) change(before.id, { body });
    else add([body]);
  };
  return (
    <>
      <PinGrid
        part={part}
        readings={new Map(readings.map((r) => [r.pin, r]))}
        verdicts={verdicts}
        usual={(pin) => usualWords(part, known, pin)}
        onRead={onRead}
      />
      <PartScore part={part} known={known} judged={judged} />
    </>
  );
}

function PartScore({ part, known, judged }: { part: BoardPart; known: KnownPart; judged: ReturnType<typeof judgePart> }) {
  const family = logicFamilyOf(part.partNumber);
  const byPin = new Map(judged.pins.map((pin) => [pin.pin, pin]));
  const told = judged.pins.filter((pin) => pin.verdict === 'unusual');
  if (judged.pins.length === 0) return null;
  return (
    <div className="part-score">
      <h3>Is {part.designator} usual?</h3>
      <p>
        Evidence that the fault is at this part: <strong>{formatDecibans(judged.score)}</strong>, from {known.working?.units ?? 0} working units
        and {known.faulty?.units ?? 0} with a fault at this part.{' '}
        {judged.drivers.length > 0 ? `It comes most of all from pin ${judged.drivers.slice(0, 3).join(', pin ')}.` : ''}
      </p>
      <ul className="verdict-key" aria-label="Marks">
        {(['usual', 'unusual', 'not-enough'] as const).map((verdict) => (
          <li key={verdict}>
            <VerdictMark verdict={verdict} /> {VERDICT_WORDS[verdict]}: {judged.pins.filter((pin) => pin.verdict === verdict).length}
          </li>
        ))}
      </ul>
      {told.length > 0 ? (
        <ul className="verdict-list" aria-label="Unusual pins">
          {told.map((pin) => (
            <li key={pin.pin}>
              <VerdictMark verdict="unusual" /> Pin {pin.pin} {part.pinNames[Number(pin.pin) - 1] ?? ''}: {verdictReason(byPin.get(pin.pin) ?? pin)}
            </li>
          ))}
        </ul>
      ) : null}
      {family ? (
        <p className="soft small">
          Levels of {family.name}: input high from {family.inputHigh} V, low up to {family.inputLow} V; supply {family.supply.low} to{' '}
          {family.supply.high} V. Source: {family.source}
        </p>
      ) : (
        <p className="soft small">No levels are published here for this part: only working units are compared.</p>
      )}
    </div>
  );
}
