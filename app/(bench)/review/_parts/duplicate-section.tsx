import Link from 'next/link';
import type { Likeness } from '../../../../shared/domain/review/likely-duplicates';
import type { CaseView } from '../../../../shared/schemas/case-view';
import { formatMonth, formatPercent } from '../../../_components/format-figures';
import { CASE_OUTCOME_WORDS, inSentence, joinWords } from '../../../_components/words';
import { merge } from '../_actions/decide';
import { DecisionForm } from './decision-form';

type DuplicateSectionProps = {
  view: CaseView;
  duplicates: { view: CaseView; likeness: Likeness }[];
  seen: string;
  mayMerge: boolean;
  query: string;
};

/** Cases that look like the same repair, each side by side with this one, and why it looks so. */
export function DuplicateSection({ view, duplicates, seen, mayMerge, query }: DuplicateSectionProps) {
  return (
    <section className="section" aria-labelledby="duplicates-head">
      <h2 id="duplicates-head">Told before?</h2>
      {duplicates.length === 0 ? <p>No other case looks like the same repair.</p> : null}
      {duplicates.map(({ view: other, likeness }) => (
        <div key={other.id}>
          <h3>{formatPercent(likeness.similarity)} alike</h3>
          <p>{whyOf(likeness)}.</p>
          <Beside one={view} other={other} />
          {mayMerge && other.status === 'accepted' ? (
            <DecisionForm action={merge} hidden={{ id: view.id, seen, query, into: other.id }} submit="The same repair: merge it into this case" />
          ) : null}
        </div>
      ))}
    </section>
  );
}

function whyOf({ wording, findings, shared, all, device, sameMonth, parts }: Likeness): string {
  const near = { same: 'the same device', model: 'the same model, another board', other: 'another device' }[device];
  return joinWords([
    wording === null ? 'one of them has no words' : `${formatPercent(wording)} of the wording is the same`,
    `${shared} of ${all} findings are the same (${formatPercent(findings)} by weight)`,
    near,
    ...(sameMonth ? ['the same month'] : []),
    ...(parts.length > 0 ? [`both name ${joinWords(parts)}`] : []),
  ]);
}

function Beside({ one, other }: { one: CaseView; other: CaseView }) {
  const rows: [string, (view: CaseView) => string][] = [
    ['Unit', (view) => `${view.device.label}, ${formatMonth(view.month)}`],
    ['Seen', (view) => joinWords(view.symptoms.filter((s) => s.present).map((s) => inSentence(s.label)))],
    ['Steps', (view) => joinWords(view.steps.map((step) => (step.kind === 'check' ? `${inSentence(step.label)} ${step.outcomeLabel}` : `${joinWords(step.fixes.map((f) => inSentence(f.label)))}: ${step.result}`)))],
    ['Cause', (view) => joinWords(view.causes.map((c) => [inSentence(c.label), ...c.designators].join(' '))) || 'not found'],
    ['Outcome', (view) => CASE_OUTCOME_WORDS[view.outcome]],
    ['Words', (view) => view.narrative],
  ];
  return (
    <details>
      <summary className="back">Side by side</summary>
      <table className="plain-table beside">
        <thead>
          <tr>
            <td />
            <th scope="col">This one</th>
            <th scope="col">
              <Link href={`/review/${other.id}`} prefetch={false}>
                {other.status === 'accepted' ? 'Published' : 'Waiting'}: {other.id}
              </Link>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, tell]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{tell(one)}</td>
              <td>{tell(other)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
