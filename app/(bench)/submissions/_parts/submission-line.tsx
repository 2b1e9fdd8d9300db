import Link from 'next/link';
import type { CaseEvent } from '../../../../shared/domain/submission/next-status';
import type { CaseStatus } from '../../../../shared/schemas/case';
import type { CaseView } from '../../../../shared/schemas/case-view';
import { DiffSections } from '../../../_components/diff-sections';
import { formatMonth } from '../../../_components/format-figures';
import { capital, inSentence, joinWords } from '../../../_components/words';
import { ChangeButton } from './change-button';
import { STATUS_WORDS } from './status-words';

type Change = { event: CaseEvent; from: CaseStatus; to: CaseStatus; month: string; reason: string | null };
type Line = {
  view: CaseView;
  history: Change[];
  proposals: { kind: string; word: string; meaning: string }[];
  may: CaseEvent[];
  mayRemove: boolean;
  edits: { number: number; month: string; sections: { name: string; parts: { state: 'same' | 'out' | 'in'; text: string }[] }[] }[];
};

/** One submission: where it stands, how it came there, and what can be done. */
export function SubmissionLine({ line: { view, history, proposals, may, mayRemove, edits } }: { line: Line }) {
  const present = view.symptoms.filter((s) => s.present).map((s) => inSentence(s.label));
  const name = present.length > 0 ? capital(joinWords(present)) : 'No symptom of the vocabulary';
  const reason = history.at(-1)?.reason ?? null;
  return (
    <li className="submission">
      <p>
        <strong>{name}</strong> <span className="soft">{view.device.label}</span>
      </p>
      <p>
        <strong>{capital(STATUS_WORDS[view.status].name)}.</strong> {STATUS_WORDS[view.status].meaning}
        {reason === null ? '' : ` The reason given: “${reason}”`}
      </p>
      <details>
        <summary className="back">How it came there</summary>
        <ol className="submission-history">
          {history.map((change, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a history only grows at its end
            <li key={i}>
              {formatMonth(change.month)}: {STATUS_WORDS[change.to].name}
              {change.reason === null ? '' : `, “${change.reason}”`}
            </li>
          ))}
        </ol>
        {proposals.length > 0 ? <p>Proposed with it: {joinWords(proposals.map((p) => `${p.word} (${p.kind})`))}.</p> : null}
        <p>
          Case <span className="figure">{view.id}</span>
        </p>
      </details>
      {edits.map(({ number, month, sections }) => (
        <details key={number}>
          <summary className="back">What a moderator changed in {formatMonth(month)}</summary>
          <DiffSections sections={sections} />
        </details>
      ))}
      <div className="post-row-keys">
        {view.status === 'accepted' ? (
          <Link href={`/cases/${view.id}`} className="press" prefetch={false}>
            See it<span className="sr-only">: {name}</span>
          </Link>
        ) : null}
        {may.includes('save') ? <ChangeButton id={view.id} change="edit" about={name} /> : null}
        {may.includes('withdraw') ? <ChangeButton id={view.id} change="withdraw" about={name} /> : null}
        {mayRemove ? <ChangeButton id={view.id} change="remove" about={name} /> : null}
        <ChangeButton id={view.id} change="cut" about={name} />
      </div>
    </li>
  );
}
