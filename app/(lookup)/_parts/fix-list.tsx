import type { FixSuggestion } from '../../../shared/schemas/look-up';
import { withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatCount, formatPercent, formatPercentRange } from '../../_components/format-figures';
import { ShareBar } from '../../_components/share-bar';
import { capital } from '../../_components/words';

type FixListProps = { question: Question; fixes: FixSuggestion[] };

/** Which fix most often resolved it, ranked by the interval's lower end, failed tries counted. */
export function FixList({ question, fixes }: FixListProps) {
  if (fixes.length === 0) return null;
  return (
    <section className="section" aria-labelledby="fixes-head">
      <h2 id="fixes-head">Which fix most often resolved it</h2>
      <p className="section-sub">
        Of the times that it was tried on units like this one; ranked by the lower end of the bracket.
      </p>
      <ol className="rows">
        {fixes.map((fix) => (
          <li className="row fix-row" key={fix.id}>
            <strong>{capital(fix.label)}</strong>
            <ShareBar share={fix.estimate} low={fix.low} high={fix.high} />
            <span className="cause-share">{formatPercent(fix.estimate)}</span>
            <span className="cause-count">
              cured {formatCount(fix.resolved)} of {formatCount(fix.tried)} tries (
              <span className="figure">{formatPercentRange(fix.low, fix.high)}</span>){otherResults(fix)} ·{' '}
              <AddressLink
                href={`${questionHref('/', withFinding(question, { kind: 'fix', id: fix.id, value: 'no-change' }))}#answer`}
                scroll
                className="row-link"
                label={`I tried this without change: ${fix.label}`}
              >
                I tried this: no change
              </AddressLink>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function otherResults(fix: FixSuggestion): string {
  const parts: string[] = [];
  if (fix.partly > 0) parts.push(`${formatCount(fix.partly)} partly`);
  if (fix.noChange > 0) parts.push(`${formatCount(fix.noChange)} without change`);
  if (fix.madeWorse > 0) parts.push(`${formatCount(fix.madeWorse)} made worse`);
  return parts.length > 0 ? `, ${parts.join(', ')}` : '';
}
