import type { DeviceGroup } from './device-choice';

/** The options of a device list: the models as groups, each with its boards. */
export function DeviceOptions({ groups }: { groups: readonly DeviceGroup[] }) {
  return groups.map((group) => (
    <optgroup key={group.label} label={group.label}>
      {group.options.map((option) => (
        <option key={option.slug} value={option.slug}>
          {option.label}
        </option>
      ))}
    </optgroup>
  ));
}
