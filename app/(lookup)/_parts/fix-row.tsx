import type { FixSuggestion } from '../../../shared/schemas/look-up';
import { withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatCount, formatPercent, formatPercentRange } from '../../_components/format-figures';
import { ShareBar } from '../../_components/share-bar';
import { capital } from '../../_components/words';

type FixRowProps = { question: Question; fix: FixSuggestion };

/** One fix: its tries and cures, the share with its bracket, and a press to say that it changed nothing here. */
export function FixRow({ question, fix }: FixRowProps) {
  const tried = `${questionHref('/', withFinding(question, { kind: 'fix', id: fix.id, value: 'no-change' }))}#answer`;
  return (
    <li className="row fix-row">
      <strong>{capital(fix.label)}</strong>
      <ShareBar share={fix.estimate} low={fix.low} high={fix.high} />
      <span className="cause-share">{formatPercent(fix.estimate)}</span>
      <span className="cause-count">
        {fix.tried === 0 ? 'never tried on a unit like this one' : triedWords(fix)} (
        <span className="figure">{formatPercentRange(fix.low, fix.high)}</span>) ·{' '}
        <AddressLink href={tried} scroll className="row-link" label={`I tried this without change: ${fix.label}`}>
          I tried this: no change
        </AddressLink>
      </span>
    </li>
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
