import Link from 'next/link';
import type { RevisionChange } from '../../../../shared/schemas/device-view';
import { capital } from '../../../_components/words';
import { shareWords } from './weak-spots';

const KINDS = { added: 'added', removed: 'gone', changed: 'another' } as const;

/** What changed from each board revision to the next: parts, and what fails. Nothing where there is one revision. */
export function RevisionChanges({ changes }: { changes: RevisionChange[] }) {
  if (changes.length === 0) return null;
  return (
    <section className="section">
      <h2>What changed between revisions</h2>
      {changes.map((change) => (
        <div key={change.to.id}>
          <h3>
            {change.from.label} → {change.to.label}
          </h3>
          {change.parts.length === 0 ? <p>The part lists are the same.</p> : <PartChanges change={change} />}
          {change.faults.length === 0 ? (
            <p>No part is at fault clearly more or less often on the later board.</p>
          ) : (
            <FaultChanges change={change} />
          )}
        </div>
      ))}
    </section>
  );
}

function PartChanges({ change }: { change: RevisionChange }) {
  return (
    <table className="plain-table">
      <caption className="sr-only">Parts that changed</caption>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Role</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        {change.parts.map((part) => (
          <tr key={part.designator}>
            <th scope="row" className="figure">
              {part.designator}
            </th>
            <td>
              <Link href={`/parts/${part.role.id}`} prefetch={false}>
                {capital(part.role.label)}
              </Link>
            </td>
            <td>
              {KINDS[part.kind]}: <span className="figure">{[part.before, part.after].filter(Boolean).join(' → ')}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function FaultChanges({ change }: { change: RevisionChange }) {
  return (
    <table className="plain-table">
      <caption className="section-sub">At fault clearly more or less often: the 90% intervals do not overlap</caption>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Earlier board</th>
          <th scope="col">Later board</th>
        </tr>
      </thead>
      <tbody>
        {change.faults.map((fault) => (
          <tr key={fault.id}>
            <th scope="row">
              <Link href={`/parts/${fault.id}`} prefetch={false}>
                {capital(fault.label)}
              </Link>
            </th>
            <td>{shareWords(fault.before)}</td>
            <td>{shareWords(fault.after)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
