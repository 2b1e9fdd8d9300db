import Link from 'next/link';
import type { CaseOutcome, Proof } from '../../../shared/schemas/case';
import type { SimilarCase } from '../../../shared/schemas/look-up';
import { formatMonth, formatScore } from '../../_components/format-figures';
import { CASE_OUTCOME_WORDS, capital, inSentence, joinWords, PROOF_WORDS } from '../../_components/words';

/** The cases most like this unit: what they share with it, what speaks against, what it was and how it ended. */
export function SimilarCases({ cases }: { cases: SimilarCase[] }) {
  return (
    <section className="section" aria-labelledby="similar-head">
      <h2 id="similar-head">Cases like yours</h2>
      <p className="section-sub">
        What they share with your unit, what contradicts it, and how they ended. The figure says how alike they are.
      </p>
      {cases.length === 0 ? <p>No case on record shares a finding with yours.</p> : null}
      <ol className="rows">
        {cases.map((entry) => (
          <li className="row case-row" key={entry.id}>
            <span className="case-score">{formatScore(entry.score)}</span>
            <div>
              <Link href={`/cases/${entry.id}`} prefetch={false}>
                {entry.excerpt === '' ? `${entry.device.label}, ${formatMonth(entry.month)}` : entry.excerpt}
              </Link>
              <p className="case-told">
                {entry.device.label}, {formatMonth(entry.month)}
              </p>
              <Told name="Shares" items={entry.shared.map((item) => `${inSentence(item.label)}: ${inSentence(item.value)}`)} />
              <Told
                name="Against"
                against
                items={entry.contradicting.map(
                  (item) => `${inSentence(item.label)}: ${inSentence(item.there)}, yours ${inSentence(item.value)}`,
                )}
              />
            </div>
            <p className="case-end">{endWords(entry)}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Told({ name, items, against = false }: { name: string; items: string[]; against?: boolean }) {
  if (items.length === 0) return null;
  return (
    <p className={against ? 'case-told case-against' : 'case-told'}>
      <strong>{name}:</strong> {joinWords(items)}
    </p>
  );
}

function endWords(entry: SimilarCase): string {
  const causes = entry.cause.map((cause) => [inSentence(cause.label), ...cause.designators].join(' '));
  const cause = causes.length > 0 ? capital(joinWords(causes)) : 'Cause not found';
  const proof = entry.proof === null ? '' : `, proved ${PROOF_WORDS[entry.proof as Proof] ?? entry.proof}`;
  const said = entry.proof === 'suspected' ? ', only suspected' : proof;
  return `${cause}${said}. ${capital(CASE_OUTCOME_WORDS[entry.outcome as CaseOutcome] ?? entry.outcome)}.`;
}
