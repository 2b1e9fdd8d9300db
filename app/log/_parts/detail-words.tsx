import type { LogDetail } from '../../../shared/schemas/log';

/** What an entry says besides what was done. */
export function DetailWords({ details }: { details: readonly LogDetail[] }) {
  if (details.length === 0) return null;
  return (
    <ul className="log-details">
      {details.map(({ label, text }) => (
        <li key={label}>
          <span className="soft">{label}:</span> {text}
        </li>
      ))}
    </ul>
  );
}
