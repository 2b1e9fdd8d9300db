import type { FixSuggestion } from '../../../shared/schemas/look-up';
import { withFinding } from '../../_address/edit-question';
import { type Question, questionHref } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatCount, formatCounted } from '../../_components/format-figures';
import { capital } from '../../_components/words';
import { FixRow } from './fix-row';
import { type Unfolded, unfoldedHref } from './unfolded';

const SHOWN_MOST = 6;

type FixListProps = { question: Question; fixes: FixSuggestion[]; unfolded: Unfolded };

/** Which fix most often resolved it, failed tries counted; a fix never tried on such a unit is folded with the rest. */
export function FixList({ question, fixes, unfolded }: FixListProps) {
  if (fixes.length === 0) return null;
  const shown = fixes.filter((fix) => fix.tried > 0).slice(0, SHOWN_MOST);
  const folded = fixes.filter((fix) => !shown.includes(fix));
  const row = (fix: FixSuggestion) => (
    <FixRow
      key={fix.id}
      label={capital(fix.label)}
      counted={fix.tried === 0 ? 'never tried on a unit like this one' : triedWords(fix)}
      estimate={fix.estimate}
      low={fix.low}
      high={fix.high}
      inVain={`${questionHref('/', withFinding(question, { kind: 'fix', id: fix.id, value: 'no-change' }))}#answer`}
    />
  );
  return (
    <section className="section" aria-labelledby="fixes-head">
      <h2 id="fixes-head">Which fix most often resolved it</h2>
      <p className="section-sub">
        Of the times that it was tried on units like this one; ranked by the lower end of the bracket, so that one of one does not
        beat forty of fifty.
      </p>
      {shown.length === 0 ? <p>No fix was tried on a unit like this one yet.</p> : null}
      <ol className="rows">
        {shown.map(row)}
      </ol>
      {folded.length > 0 ? (
        <div className="folded row" id="other-fixes">
          <p className="folded-head no-print">
            <AddressLink href={`${unfoldedHref(question, { ...unfolded, fixes: !unfolded.fixes })}#other-fixes`} scroll>
              {unfolded.fixes ? 'Fold the ' : ''}
              {formatCounted(folded.length, 'other fix', 'other fixes')}
            </AddressLink>
          </p>
          {unfolded.fixes ? (
            <ol className="rows">
              {folded.map(row)}
            </ol>
          ) : null}
        </div>
      ) : null}
    </section>
  );
}

function triedWords(fix: FixSuggestion): string {
  const parts = [`cured ${formatCount(fix.resolved)} of ${formatCount(fix.tried)}`];
  if (fix.partly > 0) parts.push(`partly ${formatCount(fix.partly)}`);
  if (fix.noChange > 0) parts.push(`no change ${formatCount(fix.noChange)}`);
  if (fix.madeWorse > 0) parts.push(`made worse ${formatCount(fix.madeWorse)}`);
  if (fix.cameBack > 0) parts.push(`came back later ${formatCount(fix.cameBack)}`);
  return parts.join(', ');
}
