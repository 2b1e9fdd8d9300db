import type { CaseStatus } from '../../../../shared/schemas/case';

/** Where a submission stands, and what that means for whoever posted it. */
export const STATUS_WORDS: Record<CaseStatus, { name: string; meaning: string }> = {
  draft: { name: 'draft', meaning: 'Not sent yet.' },
  submitted: { name: 'waits for review', meaning: 'A moderator looks at it before it is published.' },
  'changes-requested': { name: 'changes asked for', meaning: 'A moderator asks for changes; it waits for you.' },
  resubmitted: { name: 'waits for review again', meaning: 'Your changes are with the moderators.' },
  accepted: { name: 'published', meaning: 'It is in the casebook and counts in its figures.' },
  declined: { name: 'declined', meaning: 'It is not published.' },
  withdrawn: { name: 'withdrawn', meaning: 'You took it back; it is not published. Posting the same again takes it up.' },
  merged: { name: 'a second report', meaning: 'The same repair is published already: that case now says that it was reported more than once.' },
  retracted: { name: 'retracted', meaning: 'It was published, and a moderator has taken it back.' },
};
