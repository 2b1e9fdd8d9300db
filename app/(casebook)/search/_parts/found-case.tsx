import Link from 'next/link';
import type { FoundCase as Found } from '../../../../shared/schemas/search';
import { formatMonth } from '../../../_components/format-figures';
import { CASE_OUTCOME_WORDS, capital, inSentence, joinWords } from '../../../_components/words';

/** A found case: what it showed, where its words stand, what it was and how it ended. */
export function FoundCase({ found: { item, snippet, highlights } }: { found: Found }) {
  const causes = item.causes.map((cause) => [inSentence(cause.label), ...cause.designators].join(' '));
  return (
    <li className="row case-line">
      <div>
        <Link href={`/cases/${item.id}`} prefetch={false}>
          {item.symptoms.length > 0 ? capital(joinWords(item.symptoms.map(inSentence))) : 'No symptom recorded'}
        </Link>
        {snippet === '' ? null : (
          <p>
            <Marked text={snippet} marks={highlights} />
          </p>
        )}
        <p className="case-told">
          {item.device.label}, {formatMonth(item.month)}
        </p>
      </div>
      <p className="case-end">
        {causes.length > 0 ? capital(joinWords(causes)) : 'Cause not found'}. {capital(CASE_OUTCOME_WORDS[item.outcome])}.
      </p>
    </li>
  );
}

/** A text with some stretches marked. */
function Marked({ text, marks }: { text: string; marks: readonly [number, number][] }) {
  return marks.flatMap(([start, end], at) => {
    const before = text.slice(marks[at - 1]?.[1] ?? 0, start);
    const rest = at === marks.length - 1 ? text.slice(end) : '';
    return [before, <mark key={start}>{text.slice(start, end)}</mark>, rest];
  }).concat(marks.length === 0 ? [text] : []);
}
