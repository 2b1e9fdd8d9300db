import Form from 'next/form';
import type { DeviceChoice } from '../../../../shared/schemas/case-view';

type DeviceFilterProps = {
  devices: DeviceChoice[];
  device: string | null;
  /** The page that is narrowed. */
  action: string;
  /** What else the address holds and is kept. */
  keep?: readonly (readonly [string, string])[];
};

/** Narrows a page to one device; a plain GET form. */
export function DeviceFilter({ devices, device, action, keep = [] }: DeviceFilterProps) {
  return (
    <Form action={action} className="ask device-filter" key={device ?? ''}>
      {keep.map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <div className="ask-field">
        <label htmlFor="device">Device</label>
        <select id="device" name="on" defaultValue={device ?? ''}>
          <option value="">Any device</option>
          {devices.map((choice) => (
            <option key={choice.slug} value={choice.slug}>
              {choice.label}
              {choice.level === 'model' ? ', any board' : ''} ({choice.cases})
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
