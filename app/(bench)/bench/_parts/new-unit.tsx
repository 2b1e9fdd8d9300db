'use client';

import { useState } from 'react';
import { BENCH_LIMITS } from '../../../../shared/schemas/bench';
import type { DeviceCatalogue } from '../../../../shared/schemas/device';
import { deviceGroups } from '../../../_components/device-choice';
import { DeviceOptions } from '../../../_components/device-options';

type NewUnitProps = { catalogue: DeviceCatalogue; device: string | null; onNew: (device: string, label: string, working: boolean) => void };

/** Puts a unit on the bench: which device it is, and a name to tell it by. */
export function NewUnit({ catalogue, device, onNew }: NewUnitProps) {
  const [chosen, setChosen] = useState(device ?? '');
  const [label, setLabel] = useState('');
  const [working, setWorking] = useState(false);
  const [told, setTold] = useState(false);
  return (
    <form
      className="new-unit"
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen === '') return setTold(true);
        onNew(chosen, label.trim(), working);
        setLabel('');
        setTold(false);
      }}
    >
      <div className="bench-field">
        <label htmlFor="new-device">Device and board</label>
        <select id="new-device" value={chosen} aria-invalid={told} onChange={(event) => setChosen(event.target.value)}>
          <option value="">Choose</option>
          <DeviceOptions groups={deviceGroups(catalogue)} />
        </select>
        {told ? (
          <p className="bench-told" role="alert">
            Choose the device, or its model where the board is not known.
          </p>
        ) : null}
      </div>
      <div className="bench-field">
        <label htmlFor="new-label">A name to tell it by, for you alone</label>
        <input id="new-label" type="text" autoComplete="off" maxLength={BENCH_LIMITS.label} value={label} onChange={(event) => setLabel(event.target.value)} />
      </div>
      <label className="tick">
        <input type="checkbox" checked={working} onChange={(event) => setWorking(event.target.checked)} />
        <span>
          It works <span className="soft">(only readings, to tell others what is usual)</span>
        </span>
      </label>
      <button type="submit" className="press press-main">
        Put it on the bench
      </button>
    </form>
  );
}
