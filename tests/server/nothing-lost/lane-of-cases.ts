import { contentHash } from '../../../server/content-hash';
import { findCase } from '../../../server/repositories/case-repository';
import { listPhotosOfCase } from '../../../server/repositories/photo-repository';
import { tidyPhotos } from '../../../server/services/photo-tidy';
import { acceptCase, correctCase } from '../../../server/services/review/accept-case';
import { mergeCase } from '../../../server/services/review/merge-case';
import { restoreCase, retractPublished } from '../../../server/services/review/take-back';
import { askForChanges, declineCase } from '../../../server/services/review/turn-down';
import { withdrawCase } from '../../../server/services/submit-changes';
import { draftOfContent } from '../../../shared/domain/submission/draft-of-content';
import type { CaseContent } from '../../../shared/schemas/case';
import { type Lane, photoKey } from './lane';
import { post } from './post-with-photos';

type Step = (lane: Lane, id: string, content: CaseContent) => Promise<unknown>;

const decide = ({ moderator, now }: Lane, content: CaseContent, id: string) => ({
  actor: moderator,
  id,
  seen: contentHash(content),
  now,
});

const restore: Step = async (lane, id, content) => restoreCase(lane.db, await lane.model(), decide(lane, content, id));

const STEPS: Record<string, Record<string, Step>> = {
  submitted: {
    accept: async (lane, id, content) => acceptCase(lane.db, await lane.model(), decide(lane, content, id)),
    decline: (lane, id, content) => declineCase(lane.db, { ...decide(lane, content, id), reason: 'too-little', text: '' }),
    ask: (lane, id, content) =>
      askForChanges(lane.db, { ...decide(lane, content, id), asked: [{ field: 'narrative', reason: 'Say more.' }] }),
    withdraw,
    merge: async (lane, id, content) => {
      const first = await lane.db.caseFile.findFirst({ where: { status: 'accepted' }, select: { id: true } });
      return first === null ? null : mergeCase(lane.db, { ...decide(lane, content, id), into: first.id });
    },
  },
  accepted: {
    retract: (lane, id, content) => retractPublished(lane.db, { ...decide(lane, content, id), text: 'It was wrong.' }),
    correct: async (lane, id, content) => {
      const document = draftOfContent({ ...content, narrative: `${content.narrative} More.` }, [], lane.newId);
      return correctCase(lane.db, await lane.model(), { ...decide(lane, content, id), document, text: 'More was known.' });
    },
  },
  retracted: { restore },
  declined: { restore },
  merged: { restore },
};

/** Withdraws a case as the procedure does: its photos go with it, rows first and then their files. */
async function withdraw(lane: Lane, id: string): Promise<void> {
  const photos = await listPhotosOfCase(lane.db, id);
  for (const photo of photos) lane.about(photoKey(photo.id), 'withdraw');
  await tidyPhotos(lane, lane.poster.id, () => withdrawCase(lane.db, { actor: lane.poster, id, now: lane.now }));
  for (const photo of photos) lane.done(photoKey(photo.id), 'gone');
}

/** Works on the cases of one lane alone: of each case, one thing at most is under way when the end comes. */
export async function caseLane(lane: Lane, own: string[]): Promise<never> {
  for (;;) {
    const id = own.length < 3 || lane.random() < 0.3 ? null : lane.pick(own);
    if (id === null) {
      own.push(await post(lane));
      continue;
    }
    const record = await findCase(lane.db, id);
    const steps = Object.entries(STEPS[record?.status ?? ''] ?? {});
    if (record === null || steps.length === 0) {
      own.splice(own.indexOf(id), 1);
      continue;
    }
    const [op, step] = lane.pick(steps);
    lane.about(id, op);
    await step(lane, id, record.content);
    await lane.tell();
    await lane.report(id);
  }
}
