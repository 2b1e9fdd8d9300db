import Link from 'next/link';
import { type ReportReason, REPORT_WORDS } from '../../../../shared/schemas/review';
import type { CaseStatus } from '../../../../shared/schemas/case';
import { DiffSections } from '../../../_components/diff-sections';
import { formatMonth } from '../../../_components/format-figures';
import { STATUS_WORDS } from '../../submissions/_parts/status-words';

type Sections = { name: string; parts: { state: 'same' | 'out' | 'in'; text: string }[] }[];
type PastSectionProps = {
  item: {
    history: { event: string; to: CaseStatus; month: string; reason: string | null }[];
    revisions: { number: number; writer: string; month: string; sections: Sections }[];
    reports: { id: string; reason: ReportReason; text: string; month: string; settledAs: string | null }[];
    secondOf: string | null;
    seconds: string[];
  };
};

/** How the case came to where it is: what happened, each version beside the one before, reports, second reports. */
export function PastSection({ item: { history, revisions, reports, secondOf, seconds } }: PastSectionProps) {
  return (
    <section className="section" aria-labelledby="past-head">
      <h2 id="past-head">How it came here</h2>
      {history.length === 0 ? <p>It was published without review, by whoever runs the machine.</p> : null}
      <ol className="review-list">
        {history.map((change, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a history only grows at its end
          <li key={i}>
            {formatMonth(change.month)}: {change.event === 'correct' ? 'corrected' : STATUS_WORDS[change.to].name}
            {change.reason === null ? '' : `. “${change.reason}”`}
          </li>
        ))}
      </ol>
      {revisions.map(({ number, writer, month, sections }) => (
        <details key={number}>
          <summary className="back">
            Version {number}, by {writer === 'moderator' ? 'a moderator' : 'whoever posted it'}, {formatMonth(month)}
          </summary>
          <DiffSections sections={sections} />
        </details>
      ))}
      {secondOf ? <CaseLink told="A second report of" id={secondOf} /> : null}
      {seconds.map((id) => (
        <CaseLink key={id} told="Reported again as" id={id} />
      ))}
      {reports.map((report) => (
        <p key={report.id}>
          <strong>{report.settledAs === null ? 'Open report' : `Report, ${report.settledAs}`}:</strong> {REPORT_WORDS[report.reason]}. “
          {report.text}”
        </p>
      ))}
    </section>
  );
}

function CaseLink({ told, id }: { told: string; id: string }) {
  return (
    <p>
      {told}{' '}
      <Link href={`/review/${id}`} prefetch={false} className="figure">
        {id}
      </Link>
    </p>
  );
}
