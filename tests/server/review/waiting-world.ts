import { contentHash } from '../../../server/content-hash';
import { findCase } from '../../../server/repositories/case-repository';
import type { DraftDocument } from '../../../shared/schemas/submission';
import { smallCases } from '../fixtures/small-cases';
import { fullForm, posting } from '../submission/posting';

/** A casebook of twenty published cases, a contributor's submission that waits, and two moderators. */
export async function waitingWorld(form: Partial<DraftDocument> = {}) {
  const published = smallCases(20);
  const world = await posting(published);
  const contributor = await world.as('one');
  const moderator = await world.as('mod', 'moderator');
  const other = await world.as('mod-2', 'moderator');
  const post = async (override: Partial<DraftDocument> = {}) => {
    const outcome = await contributor.submission.submit({ draftId: null, document: fullForm(override) });
    if (outcome.kind !== 'submitted') throw new Error(JSON.stringify(outcome));
    return outcome.id;
  };
  const id = await post(form);
  const seen = async (caseId = id) => contentHash((await findCase(world.db, caseId))?.content);
  const status = async (caseId = id) => (await findCase(world.db, caseId))?.status;
  const firstPublished = published[0]?.id as string;
  return { ...world, contributor, moderator, other, post, id, seen, status, firstPublished };
}
