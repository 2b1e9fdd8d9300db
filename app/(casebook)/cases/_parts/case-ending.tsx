import Link from 'next/link';
import { Fragment } from 'react';
import type { CaseView } from '../../../../shared/schemas/case-view';
import { formatMinutes } from '../../../_components/format-figures';
import { CASE_OUTCOME_WORDS, capital, PROOF_WORDS } from '../../../_components/words';
import { WordLinks } from './word-links';

/** What it was, how that was proved, how it ended, and what was done to see that it holds. */
export function CaseEnding({ found }: { found: CaseView }) {
  const soak = found.soakMinutes === null ? '' : `left running for ${formatMinutes(found.soakMinutes)}`;
  return (
    <section className="section">
      <h2>What it was</h2>
      <dl className="facts">
        <dt>Cause</dt>
        <dd>
          {found.causes.length === 0 ? <strong>Not found</strong> : null}
          {found.causes.map((cause, at) => (
            <Fragment key={cause.id}>
              {at > 0 ? '; ' : ''}
              <Link href={`/parts/${cause.role}#${cause.id}`} prefetch={false}>
                <strong>{capital(cause.label)}</strong>
              </Link>
              {cause.designators.length > 0 ? ` (${cause.designators.join(', ')})` : ''}
            </Fragment>
          ))}
        </dd>
        {found.proof === null ? null : (
          <>
            <dt>Proved</dt>
            <dd>{PROOF_WORDS[found.proof]}</dd>
          </>
        )}
        <dt>Outcome</dt>
        <dd>{CASE_OUTCOME_WORDS[found.outcome]}</dd>
        <dt>After the repair</dt>
        <dd>
          {found.afterRepairChecks.length > 0 ? (
            <>
              Checked again:{' '}
              <WordLinks words={found.afterRepairChecks.map((c) => ({ ...c, href: `/parts/${c.role}#${c.id}` }))} />
              {soak === '' ? '' : '; '}
            </>
          ) : null}
          {found.afterRepairChecks.length > 0 ? soak : capital(soak)}
          {found.afterRepairChecks.length === 0 && soak === '' ? 'Not recorded' : ''}
        </dd>
      </dl>
    </section>
  );
}
