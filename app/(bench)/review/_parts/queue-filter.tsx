import Form from 'next/form';
import Link from 'next/link';
import type { QueueFilter as Filter } from '../../../../shared/schemas/review';
import { formatCount } from '../../../_components/format-figures';

type QueueFilterProps = {
  filter: Filter;
  counts: { all: number; marks: number; words: number; newcomer: number };
  devices: { slug: string; label: string; waiting: number }[];
};

/** Which of the waiting cases are shown, each choice with how many there are; a plain GET form. */
export function QueueFilter({ filter, counts, devices }: QueueFilterProps) {
  const ticks = [
    { name: 'marks', label: 'Personal details kept', on: filter.marks, count: counts.marks },
    { name: 'words', label: 'Proposed words', on: filter.words, count: counts.words },
    { name: 'new', label: 'New contributor', on: filter.newcomer, count: counts.newcomer },
  ];
  return (
    <Form action="/review" className="ask queue-filter" key={JSON.stringify(filter)}>
      <div className="ask-field">
        <label htmlFor="queue-device">Device</label>
        <select id="queue-device" name="on" defaultValue={filter.device ?? ''}>
          <option value="">Any device ({formatCount(counts.all)})</option>
          {devices.map((device) => (
            <option key={device.slug} value={device.slug}>
              {device.label} ({formatCount(device.waiting)})
            </option>
          ))}
        </select>
      </div>
      <div className="ask-field">
        <label htmlFor="queue-order">Order</label>
        <select id="queue-order" name="order" defaultValue={filter.order}>
          <option value="oldest">Longest waiting first</option>
          <option value="newest">Latest first</option>
        </select>
      </div>
      <fieldset className="queue-ticks">
        <legend>Only those with</legend>
        {ticks.map(({ name, label, on, count }) => (
          <label key={name} className="tick">
            <input type="checkbox" name={name} value="1" defaultChecked={on} />
            <span>
              {label} <span className="soft">({formatCount(count)})</span>
            </span>
          </label>
        ))}
      </fieldset>
      <p className="onward">
        <button type="submit" className="press">
          Show
        </button>
        <Link href="/review" prefetch={false}>
          Show all
        </Link>
      </p>
    </Form>
  );
}
