import Link from 'next/link';
import type { QueueLine as Line } from '../../../../shared/schemas/review';
import { formatCounted } from '../../../_components/format-figures';
import { capital, inSentence, joinWords } from '../../../_components/words';

/** One waiting case on one line of the queue. */
export function QueueLine({ line, query }: { line: Line; query: string }) {
  const symptoms = line.symptoms.length > 0 ? capital(joinWords(line.symptoms.map(inSentence))) : 'No symptom of the vocabulary';
  return (
    <li className="row queue-line">
      <div>
        <Link href={`/review/${line.id}${query}`} prefetch={false}>
          {symptoms}
        </Link>
        <p className="case-told">
          {line.device}; {line.causes.length > 0 ? joinWords(line.causes.map(inSentence)) : 'cause not found'}
        </p>
      </div>
      <div className="queue-facts">
        <p>{waited(line.days)}</p>
        <ul className="queue-tags">
          {factsOf(line).map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
        {line.claim.state === 'other' ? (
          <p>
            <strong>Being looked at</strong> by {line.claim.by}, for {formatCounted(line.claim.minutes, 'minute')} more at most
          </p>
        ) : null}
        {line.claim.state === 'mine' ? (
          <p>
            <strong>You are looking at it</strong>
          </p>
        ) : null}
      </div>
    </li>
  );
}

function waited(days: number): string {
  return days === 0 ? 'Came today' : `Waits for ${formatCounted(days, 'day')}`;
}

function factsOf({ again, marks, words, newcomer, own }: Line): string[] {
  return [
    own ? 'your own: another moderator decides' : '',
    again ? 'sent again after changes' : '',
    marks > 0 ? formatCounted(marks, 'personal detail', 'personal details') : '',
    words > 0 ? formatCounted(words, 'proposed word') : '',
    newcomer ? 'new contributor' : '',
  ].filter((fact) => fact !== '');
}
