import Link from 'next/link';
import type { FullLogEntry } from '../../../shared/schemas/log';
import { formatMonth } from '../../_components/format-figures';
import { DetailWords } from './detail-words';

/** Decisions in their order, with who made them and what they are about. */
export function FullEntries({ entries }: { entries: readonly FullLogEntry[] }) {
  if (entries.length === 0) return null;
  return (
    <ol className="rows section">
      {entries.map((entry) => (
        <li className="row" key={entry.key} value={entry.seq} id={`entry-${entry.seq}`}>
          <p>
            <span className="figure">{entry.seq}</span> {entry.says}
            <SubjectOf subject={entry.subject} />
          </p>
          <p className="soft small">
            {entry.time === null ? formatMonth(entry.month) : `${entry.time.replace('T', ' ').replace('Z', '')} UTC`}, by{' '}
            {entry.actor ?? 'the machine'}, hash <span className="figure">{entry.hash.slice(0, 12)}…</span>
          </p>
          <DetailWords details={entry.details} />
        </li>
      ))}
    </ol>
  );
}

function SubjectOf({ subject: { kind, label, href } }: { subject: FullLogEntry['subject'] }) {
  if (kind === 'casebook' || label === '') return null;
  return (
    <>
      {': '}
      {href === null ? (
        <span>{label}</span>
      ) : (
        <Link href={href} prefetch={false} className="figure">
          {label}
        </Link>
      )}
    </>
  );
}
