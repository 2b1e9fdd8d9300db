import type { FixSuggestion } from '../../../shared/schemas/look-up';
import type { Question } from '../../_address/question';
import { formatCounted } from '../../_components/format-figures';
import { FixRow } from './fix-row';

const SHOWN_MOST = 6;

type FixListProps = { question: Question; fixes: FixSuggestion[] };

/** Which fix most often resolved it, failed tries counted; a fix never tried on such a unit is folded with the rest. */
export function FixList({ question, fixes }: FixListProps) {
  if (fixes.length === 0) return null;
  const shown = fixes.filter((fix) => fix.tried > 0).slice(0, SHOWN_MOST);
  const folded = fixes.filter((fix) => !shown.includes(fix));
  return (
    <section className="section" aria-labelledby="fixes-head">
      <h2 id="fixes-head">Which fix most often resolved it</h2>
      <p className="section-sub">
        Of the times that it was tried on units like this one; ranked by the lower end of the bracket, so that one of one does not
        beat forty of fifty.
      </p>
      {shown.length === 0 ? <p>No fix was tried on a unit like this one yet.</p> : null}
      <ol className="rows">
        {shown.map((fix) => (
          <FixRow key={fix.id} question={question} fix={fix} />
        ))}
      </ol>
      {folded.length > 0 ? (
        <details className="folded row">
          <summary>
            <span className="opens">{formatCounted(folded.length, 'other fix', 'other fixes')}</span>
          </summary>
          <ol className="rows">
            {folded.map((fix) => (
              <FixRow key={fix.id} question={question} fix={fix} />
            ))}
          </ol>
        </details>
      ) : null}
    </section>
  );
}
