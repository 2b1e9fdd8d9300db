import type { LookUpCause, LookUpResult } from '../../../shared/schemas/look-up';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { barScale } from '../../_components/bar-scale';
import { formatCounted, formatPercent } from '../../_components/format-figures';
import { capital } from '../../_components/words';
import { CauseRow, UnlistedRow } from './cause-row';

const SHOWN_MOST = 8;
const SHOWN_LEAST = 3;
/** A cause less likely than this is folded, beyond the first three. */
const WORTH_SHOWING = 0.01;

type CauseListProps = { question: Question; result: LookUpResult };

/** The causes that matter with their evidence, the share of none of these, and the rest folded. */
export function CauseList({ question, result }: CauseListProps) {
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
          <CauseRow key={cause.id} cause={cause} matching={result.cases.matching} full={full} open={cause.id === question.why} />
        ))}
        <UnlistedRow unlisted={result.unlisted} full={full} />
        {folded.length > 0 ? (
          <li className="row">
            <FoldedCauses question={question} causes={folded} />
          </li>
        ) : null}
      </ol>
    </section>
  );
}

function isShown(cause: LookUpCause, index: number): boolean {
  return index < SHOWN_LEAST || (index < SHOWN_MOST && cause.probability >= WORTH_SHOWING);
}

function FoldedCauses({ question, causes }: { question: Question; causes: LookUpCause[] }) {
  const together = causes.reduce((sum, cause) => sum + cause.probability, 0);
  return (
    <details className="folded">
      <summary>
        <span>
          <span className="opens">{formatCounted(causes.length, 'other cause')}</span>, together
        </span>
        <span className="cause-share">{formatPercent(together)}</span>
      </summary>
      <ol className="folded-list">
        {causes.map((cause) => (
          <li key={cause.id}>
            <span>{capital(cause.label)}</span>
            <span className="figure">{formatPercent(cause.probability)}</span>
            <AddressLink
              href={`${questionHref('/', { ...question, why: cause.id })}#cause-${cause.id}`}
              scroll
              label={`Why ${cause.label}`}
            >
              why
            </AddressLink>
          </li>
        ))}
      </ol>
    </details>
  );
}
