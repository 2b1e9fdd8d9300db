import { findPersonalDetails } from '../../shared/domain/anonymise/find-personal-details';
import { knownWordsOf } from '../../shared/domain/anonymise/known-words';
import type { CaseContent } from '../../shared/schemas/case';
import type { Db } from '../../server/db';
import { findAccountByName } from '../../server/repositories/account-repository';
import { findCase } from '../../server/repositories/case-repository';
import { insertCases } from '../../server/repositories/insert-cases';
import { replaceReviewNotes } from '../../server/repositories/submission-contents';
import { changeStatus } from '../../server/repositories/submission-history';
import { insertLink } from '../../server/repositories/submission-links';
import { enterQueue } from '../../server/repositories/waiting-cases';
import { catalogue } from '../catalogue';
import { vocabulary } from '../vocabulary';
import { waitingCases } from './waiting-cases';

const HOUR = 3_600_000;
/** How far apart the submissions came in. */
const APART = 9 * HOUR;
/** Accepted cases that are the demo contributor's: one who is not new. */
const PUBLISHED = 3;

type WaitingSeed = { seed: number; newId: () => string; accepted: readonly { id: string; content: CaseContent }[]; now: Date };

/**
 * Puts the demo's waiting submissions into the queue, from the demo's contributor and, as a newcomer, its keeper. Does
 * nothing where they are there already. Returns how many were added; run it in a transaction.
 */
export async function seedWaiting(db: Db, { seed, newId, accepted, now }: WaitingSeed): Promise<number> {
  const known = knownWordsOf(vocabulary, catalogue);
  const waiting = waitingCases(
    seed,
    accepted.map(({ content }) => content),
  );
  const ids = waiting.map(() => newId());
  if (ids[0] === undefined || (await findCase(db, ids[0])) !== null) return 0;
  const contributor = await findAccountByName(db, 'demo-contributor');
  const newcomer = await findAccountByName(db, 'demo-keeper');
  if (contributor === null || newcomer === null) return 0;
  for (const { id } of accepted.slice(0, PUBLISHED)) await insertLink(db, id, contributor.id);
  await insertCases(
    db,
    waiting.map(({ content }, i) => ({ id: ids[i] as string, content, status: 'draft' as const })),
    { newId },
  );
  for (const [i, { content, proposals, newcomer: isNew }] of waiting.entries()) {
    const id = ids[i] as string;
    const found = findPersonalDetails(content.narrative, known);
    const marks = found.map(({ kind, certainty, start, end }) => ({ field: 'narrative', kind, certainty, start, end }));
    const since = new Date(now.getTime() - (waiting.length - i) * APART);
    await insertLink(db, id, isNew ? newcomer.id : contributor.id);
    await replaceReviewNotes(db, id, proposals, marks);
    await changeStatus(db, id, { event: 'submit', from: 'draft', to: 'submitted', month: since.toISOString().slice(0, 7), reason: null });
    await enterQueue(db, [id], since);
  }
  return waiting.length;
}
