import type { LookUpCause, LookUpResult } from '../../../shared/schemas/look-up';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { barScale } from '../../_components/bar-scale';
import { formatCounted, formatPercent } from '../../_components/format-figures';
import { capital } from '../../_components/words';
import { CauseRow, UnlistedRow } from './cause-row';
import { type Unfolded, unfoldedHref } from './unfolded';

const SHOWN_MOST = 8;
const SHOWN_LEAST = 3;
/** A cause less likely than this is folded, beyond the first three. */
const WORTH_SHOWING = 0.01;

type CauseListProps = { question: Question; result: LookUpResult; unfolded: Unfolded };

/** The causes that matter, one of them with its evidence where that was asked for, the share of none of these, and the rest folded. */
export function CauseList({ question, result, unfolded }: CauseListProps) {
  const shown = result.causes.filter((cause, index) => isShown(cause, index) || cause.id === question.why);
  const folded = result.causes.filter((cause) => !shown.includes(cause));
  const full = barScale([...shown.map((cause) => cause.high), result.unlisted.high]);
  return (
    <section className="section causes" aria-labelledby="causes-head">
      <h2 id="causes-head">Likely causes</h2>
      <p className="section-sub">
        Chance for a unit like this one; the bracket holds 90%, and the full width of a bar is {formatPercent(full)}. Reckoned for
        a single fault.
      </p>
      <ol className="rows">
        {shown.map((cause) => (
          <CauseRow
            key={cause.id}
            cause={cause}
            matching={result.cases.matching}
            full={full}
            evidence={cause.id === question.why ? null : unfoldedHref({ ...question, why: cause.id }, unfolded)}
          />
        ))}
        <UnlistedRow unlisted={result.unlisted} full={full} />
        {folded.length > 0 ? (
          <li className="row">
            <FoldedCauses question={question} causes={folded} unfolded={unfolded} />
          </li>
        ) : null}
      </ol>
    </section>
  );
}

function isShown(cause: LookUpCause, index: number): boolean {
  return index < SHOWN_LEAST || (index < SHOWN_MOST && cause.probability >= WORTH_SHOWING);
}

/** The causes that hardly matter: one line that leads to the same page with all of them listed, or that list. */
function FoldedCauses({ question, causes, unfolded }: { question: Question; causes: LookUpCause[]; unfolded: Unfolded }) {
  const open = unfolded.rest;
  const together = causes.reduce((sum, cause) => sum + cause.probability, 0);
  const href = `${unfoldedHref(question, { ...unfolded, rest: !open })}#other-causes`;
  return (
    <div className="folded" id="other-causes">
      <p className="folded-head">
        <span>
          <AddressLink href={href} scroll>
            {open ? `Fold the ${formatCounted(causes.length, 'other cause')}` : formatCounted(causes.length, 'other cause')}
          </AddressLink>
          , together
        </span>
        <span className="cause-share">{formatPercent(together)}</span>
      </p>
      {open ? <OtherCauses question={question} causes={causes} /> : null}
    </div>
  );
}

function OtherCauses({ question, causes }: { question: Question; causes: LookUpCause[] }) {
  return (
    <ol className="folded-list">
      {causes.map((cause) => (
        <li key={cause.id}>
          <span>{capital(cause.label)}</span>
          <span className="figure">{formatPercent(cause.probability)}</span>
          <a href={`${questionHref('/', { ...question, why: cause.id })}#cause-${cause.id}`} aria-label={`Why ${cause.label}`}>
            why
          </a>
        </li>
      ))}
    </ol>
  );
}
