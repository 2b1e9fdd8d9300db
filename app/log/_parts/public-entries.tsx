import type { PublicLogEntry } from '../../../shared/schemas/log';
import { formatMonth } from '../../_components/format-figures';
import { DetailWords } from './detail-words';

/** Decisions under their months. */
export function PublicEntries({ entries }: { entries: readonly PublicLogEntry[] }) {
  const months = [...new Set(entries.map(({ month }) => month))];
  return months.map((month) => (
    <section className="section" key={month}>
      <h2>{formatMonth(month)}</h2>
      <ul className="rows">
        {entries
          .filter((entry) => entry.month === month)
          .map((entry) => (
            <li className="row" key={entry.key}>
              <p>{entry.says}</p>
              <DetailWords details={entry.details} />
            </li>
          ))}
      </ul>
    </section>
  ));
}
