'use client';

import type { DeviceGroup } from '../../../_components/device-choice';
import { DeviceOptions } from '../../../_components/device-options';
import { Field } from './field';
import { useForm } from './form-context';

/** Which unit it was, and when it was done. */
export function DeviceSection({ groups, month }: { groups: DeviceGroup[]; month: string }) {
  const { document, update } = useForm();
  return (
    <section className="section" aria-labelledby="post-device-head">
      <h2 id="post-device-head">The unit</h2>
      <div className="post-row-fields">
        <Field field="device" label="Device and board">
          {(tie) => (
            <select {...tie} value={document.device} onChange={(e) => update((now) => ({ ...now, device: e.target.value }))}>
              <option value="">Choose</option>
              <DeviceOptions groups={groups} />
            </select>
          )}
        </Field>
        <Field field="month" label="Month in which it ended">
          {(tie) => (
            <input
              {...tie}
              type="month"
              max={month}
              value={document.month}
              onChange={(e) => update((now) => ({ ...now, month: e.target.value }))}
            />
          )}
        </Field>
      </div>
    </section>
  );
}
