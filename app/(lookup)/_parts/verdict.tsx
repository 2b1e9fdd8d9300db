import Link from 'next/link';
import type { LookUpResult, NextCheck } from '../../../shared/schemas/look-up';
import { formatCount, formatCounted, formatMinutes, formatPercent, formatPercentRange } from '../../_components/format-figures';
import { inSentence } from '../../_components/words';

/** Below this share no cause is said to stand out. */
const STANDS_OUT = 0.3;

/** The answer in a sentence, then what stands behind it. Announced when the address changes. */
export function Verdict({ result }: { result: LookUpResult }) {
  const [first, second] = result.causes;
  const next = result.nextChecks[0];
  if (!first) return null;
  return (
    <>
      <p className="verdict" role="status">
        {first.probability >= STANDS_OUT ? 'Most likely: ' : 'No cause stands out. First in line: '}
        <strong>{inSentence(first.label)}</strong>, <span className="figure">{formatPercent(first.probability)}</span>{' '}
        <span className="soft">
          (<span className="figure">{formatPercentRange(first.low, first.high)}</span>)
        </span>
        {second ? (
          <>
            ; then {inSentence(second.label)}, <span className="figure">{formatPercent(second.probability)}</span>
          </>
        ) : null}
        .{next ? <NextMove check={next} /> : null}
      </p>
      <p>
        {countWords(result)} Cases are volunteered, not sampled.{' '}
        <Link href="/method" prefetch={false}>
          How it is counted
        </Link>
      </p>
    </>
  );
}

function NextMove({ check }: { check: NextCheck }) {
  return (
    <>
      {' '}
      Check next: <a href="#next-head">{inSentence(check.label)}</a>{' '}
      <span className="soft">({formatMinutes(check.minutes)})</span>.
    </>
  );
}

function countWords(result: LookUpResult): string {
  const { cases, read } = result;
  const all = read.findings.length === 1 ? 'what you saw' : 'all that you saw';
  const here = read.device ? `, ${formatCount(cases.matchingOnDevice)} of them on ${read.device.label}` : '';
  const notFound = cases.causeNotFound > 0 ? `; in ${formatCount(cases.causeNotFound)} the cause was not found` : '';
  return `${formatCounted(cases.matching, 'case')} of ${formatCount(cases.total)} carry ${all}${here}${notFound}. ${formatCount(cases.compatible)} contradict none of it.`;
}
