import type { CaseOutcome, Proof } from '../../shared/schemas/case';
import type { SimilarCase } from '../../shared/schemas/look-up';
import { formatMonth, formatScore } from './format-figures';
import { SimilarRow } from './similar-row';
import { CASE_OUTCOME_WORDS, capital, inSentence, joinWords, PROOF_WORDS } from './words';

/** Similar cases, each with why it is there: what it shares, what speaks against it, how near its device is. */
export function SimilarList({ cases }: { cases: SimilarCase[] }) {
  return (
    <ol className="rows">
      {cases.map((entry) => (
        <SimilarRow
          key={entry.id}
          href={`/cases/${entry.id}`}
          score={formatScore(entry.score)}
          title={entry.excerpt === '' ? `${entry.device.label}, ${formatMonth(entry.month)}` : entry.excerpt}
          told={`${entry.device.label}, ${formatMonth(entry.month)}`}
          near={joinWords(nearnessWords(entry))}
          shares={joinWords(entry.shared.map((item) => `${inSentence(item.label)}: ${inSentence(item.value)}`))}
          against={joinWords(
            entry.contradicting.map((item) => `${inSentence(item.label)}: ${inSentence(item.there)}, yours ${inSentence(item.value)}`),
          )}
          end={endWords(entry)}
        />
      ))}
    </ol>
  );
}

const NEARNESS_WORDS: Record<SimilarCase['nearness'], string | null> = {
  'same-board': 'the very board',
  'same-model': 'the same model',
  'same-category': 'the same kind of device',
  other: null,
};

/** What counts for it besides its findings. */
function nearnessWords({ nearness, sharesPart }: SimilarCase): string[] {
  const near = NEARNESS_WORDS[nearness];
  return [...(near === null ? [] : [near]), ...(sharesPart ? ['the part at fault sits on your board too'] : [])];
}

function endWords(entry: SimilarCase): string {
  const causes = entry.cause.map((cause) => [inSentence(cause.label), ...cause.designators].join(' '));
  const cause = causes.length > 0 ? capital(joinWords(causes)) : 'Cause not found';
  const proof = entry.proof === null ? '' : `, proved ${PROOF_WORDS[entry.proof as Proof] ?? entry.proof}`;
  const said = entry.proof === 'suspected' ? ', only suspected' : proof;
  return `${cause}${said}. ${capital(CASE_OUTCOME_WORDS[entry.outcome as CaseOutcome] ?? entry.outcome)}.`;
}
