import Link from 'next/link';
import { caseIdSchema } from '../../../../shared/schemas/case';

const WORDS: Record<string, string> = {
  accepted: 'Accepted: it is published, and counts in the figures.',
  edited: 'Accepted with your changes: it is published, and whoever posted it sees them.',
  asked: 'The changes are asked for; it comes back when they are made.',
  declined: 'Declined; whoever posted it reads why.',
  merged: 'Taken as a second report of a published case.',
  retracted: 'Taken back: it is in no figure and no list any more.',
  restored: 'Restored.',
  corrected: 'Corrected: the new version is published, the old one kept.',
  left: 'The report is settled, and the case stays as it is.',
};

/** What was just done, with the way back to it. */
export function DoneLine({ done }: { done: string | null }) {
  const [what = '', id = ''] = (done ?? '').split('.');
  const words = WORDS[what];
  if (words === undefined) return null;
  return (
    <p className="note review-done" role="status">
      <span>
        {words}{' '}
        {caseIdSchema.safeParse(id).success ? (
          <Link href={`/review/${id}`} prefetch={false}>
            Look at it again, or undo it
          </Link>
        ) : null}
      </span>
    </p>
  );
}
