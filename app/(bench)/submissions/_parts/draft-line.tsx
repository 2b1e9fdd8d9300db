import Link from 'next/link';
import { inSentence, joinWords } from '../../../_components/words';
import { ChangeButton } from './change-button';

type DraftLineProps = { draft: { id: string; caseId: string | null; device: string | null; symptoms: string[]; steps: number } };

/** A draft, to go on with or to discard. */
export function DraftLine({ draft }: DraftLineProps) {
  const symptoms = draft.symptoms.length > 0 ? joinWords(draft.symptoms.map(inSentence)) : 'no symptom yet';
  const name = `${draft.device ?? 'No device yet'}, ${symptoms}`;
  return (
    <li className="submission">
      <p>
        <strong>{name}</strong>{' '}
        <span className="soft">
          {draft.steps} checks and fixes{draft.caseId ? ', changes to a case that was sent' : ''}
        </span>
      </p>
      <div className="post-row-keys">
        <Link href={`/post?draft=${draft.id}`} className="press" prefetch={false}>
          Go on<span className="sr-only"> with {name}</span>
        </Link>
        <ChangeButton id={draft.id} change="discard" about={name} />
      </div>
    </li>
  );
}
