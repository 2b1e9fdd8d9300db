import type { LookUpCause, LookUpResult } from '../../../shared/schemas/look-up';
import { AddressLink } from '../../_components/address-link';
import { formatCount, formatPercent, formatPercentRange } from '../../_components/format-figures';
import { ShareBar } from '../../_components/share-bar';
import { capital } from '../../_components/words';
import { Evidence } from './evidence';

type CauseRowProps = {
  cause: LookUpCause;
  matching: number;
  full: number;
  /** Address of the page that has the evidence for this cause; null where this one has it. */
  evidence: string | null;
};

/** One cause: its share with the interval, the cases behind it, and the evidence where it was asked for. */
export function CauseRow({ cause, matching, full, evidence }: CauseRowProps) {
  const figures = (
    <>
      <span>
        <span className="cause-name">{capital(cause.label)}</span>
        {cause.designators.length > 0 ? <span className="figure"> · {designatorWords(cause)}</span> : null}
      </span>
      <span className="cause-share">{formatPercent(cause.probability)}</span>
      <ShareBar share={cause.probability} low={cause.low} high={cause.high} full={full} />
    </>
  );
  const counted = (
    <>
      <span className="figure">{formatPercentRange(cause.low, cause.high)}</span> · {countWords(cause, matching)}
      {proofWords(cause)}
    </>
  );
  return (
    <li className="row" id={`cause-${cause.id}`}>
      {evidence === null ? (
        <details open>
          <summary className="cause-head">
            {figures}
            <span className="cause-count">
              {counted}
              <span className="no-print">
                {' '}
                ·{' '}
                <span className="opens">
                  <span className="opens-closed">show the evidence</span>
                  <span className="opens-open">fold the evidence</span>
                </span>
              </span>
            </span>
          </summary>
          <Evidence cause={cause} />
        </details>
      ) : (
        <div className="cause-head">
          {figures}
          <span className="cause-count">
            {counted}
            <span className="no-print">
              {' '}
              ·{' '}
              <AddressLink href={`${evidence}#cause-${cause.id}`} scroll label={`Show the evidence for ${cause.label}`}>
                show the evidence
              </AddressLink>
            </span>
          </span>
        </div>
      )}
    </li>
  );
}

/** The share of a cause that no record has yet: a row like the others, hatched. */
export function UnlistedRow({ unlisted, full }: { unlisted: LookUpResult['unlisted']; full: number }) {
  return (
    <li className="row unlisted">
      <div className="cause-head">
        <span className="cause-name">None of these</span>
        <span className="cause-share">{formatPercent(unlisted.probability)}</span>
        <ShareBar share={unlisted.probability} low={unlisted.low} high={unlisted.high} full={full} hatched />
        <span className="cause-count">
          <span className="figure">{formatPercentRange(unlisted.low, unlisted.high)}</span> · a cause that is on no record yet
        </span>
      </div>
    </li>
  );
}

function designatorWords(cause: LookUpCause): string {
  const shown = cause.designators.slice(0, 3);
  const alone = cause.designators.length === 1;
  const words = shown.map((d) => (alone ? d.designator : `${d.designator} ${formatPercent(d.probability)}`)).join(', ');
  return cause.designators.length > shown.length ? `${words} …` : words;
}

function countWords(cause: LookUpCause, matching: number): string {
  if (matching === 0) return `no matching case; ${formatCount(cause.compatible)} that contradict nothing`;
  return `${formatCount(cause.matching)} of ${formatCount(matching)} matching cases`;
}

function proofWords(cause: LookUpCause): string {
  const { substitution, measurement, repairHeld, suspected } = cause.matchingByProof;
  const kinds: [number, string][] = [
    [substitution, 'mostly proved by substitution'],
    [measurement, 'mostly proved by measurement'],
    [repairHeld, 'mostly proved by the repair holding'],
    [suspected, 'mostly only suspected'],
  ];
  const [count, words] = kinds.reduce((best, entry) => (entry[0] > best[0] ? entry : best));
  return count > 0 ? ` · ${words}` : '';
}
