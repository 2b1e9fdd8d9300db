import Form from 'next/form';
import type { DeviceChoice } from '../../../../shared/schemas/case-view';

/** Narrows a list to one device; a plain GET form. */
export function DeviceFilter({ devices, device }: { devices: DeviceChoice[]; device: string | null }) {
  return (
    <Form action="/cases" className="ask device-filter" key={device ?? ''}>
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
