import { addPhoto } from '../../../server/services/photo-add';
import { tidyPhotos } from '../../../server/services/photo-tidy';
import { submitCase } from '../../../server/services/submit-case';
import { saveDraft } from '../../../server/services/submit-draft';
import { deleteDraft } from '../../../server/repositories/submission-drafts';
import { draftOfContent } from '../../../shared/domain/submission/draft-of-content';
import type { CaseContent } from '../../../shared/schemas/case';
import type { DraftDocument } from '../../../shared/schemas/submission';
import { smallCases } from '../fixtures/small-cases';
import { makePhoto } from '../photos/make-photo';
import { type Lane, photoKey } from './lane';

/** Share of the posts that bring a photo. */
const WITH_PHOTO = 0.4;

let drawn = 0;
let picture: Promise<Uint8Array> | null = null;

function newContent({ seed }: Lane): CaseContent {
  drawn++;
  const [record] = smallCases(1, seed * 1000 + drawn);
  const content = (record as NonNullable<typeof record>).content;
  const symptoms = [{ symptom: 'grey-screen', present: true }];
  // Checks of parts that this board has.
  const steps = content.steps.filter(
    (step) => step.kind === 'fix' || ['supply-apart', 'clock-at-processor'].includes(step.check),
  );
  return {
    ...content,
    device: 'quellbrook-8-rev-a',
    symptoms,
    steps,
    readings: [],
    narrative: `Came in ${seed} ${drawn} times, and left again.`,
  };
}

/** Posts a new case, some of them by way of a draft with a photo. Returns its id. */
export async function post(lane: Lane): Promise<string> {
  const id = lane.newId();
  lane.about(id, 'post');
  const form = draftOfContent(newContent(lane), [], lane.newId);
  const draftId = lane.random() < WITH_PHOTO ? lane.newId() : null;
  const document = draftId === null ? form : await withPhoto(lane, draftId, form);
  const { db, poster: actor, now } = lane;
  const outcome = await submitCase(db, await lane.model(), {
    actor,
    draftId,
    document,
    now,
    newId: once(lane, id),
    newKey: lane.newId,
  });
  if (outcome.kind !== 'submitted') throw new Error(`A good case was not taken: ${JSON.stringify(outcome)}`);
  await lane.report(id);
  return id;
}

async function withPhoto(lane: Lane, draftId: string, document: DraftDocument): Promise<DraftDocument> {
  const { db, poster: actor, now, photoFolder } = lane;
  await saveDraft(db, await lane.model(), { ownerId: actor.id, id: draftId, isNew: true, document, now });
  const photoId = lane.newId();
  lane.about(photoKey(photoId), 'add');
  picture ??= makePhoto('png', { width: 24, height: 16, plain: true });
  const added = await addPhoto({ db, photoFolder }, { actor, draftId, bytes: await picture, now, newId: () => photoId });
  if (added.kind !== 'added') throw new Error(`A good photo was not taken: ${added.reason}`);
  lane.done(photoKey(photoId), 'kept');
  return { ...document, photos: [{ id: photoId, alt: 'The crystal, cracked across' }] };
}

/** Discards the drafts that an earlier, killed worker left, with their photos. */
export async function discardDrafts(lane: Lane): Promise<void> {
  const drafts = await lane.db.draft.findMany({
    where: { ownerId: lane.poster.id },
    select: { id: true, photos: { select: { id: true } } },
  });
  for (const { id, photos } of drafts) {
    for (const photo of photos) lane.about(photoKey(photo.id), 'discard');
    await tidyPhotos(lane, lane.poster.id, () => deleteDraft(lane.db, lane.poster.id, id));
    for (const photo of photos) lane.done(photoKey(photo.id), 'gone');
  }
}

/** The given id first, for the case; then any other, for what hangs on it. */
function once({ newId }: Lane, id: string): () => string {
  let given = false;
  return () => {
    if (given) return newId();
    given = true;
    return id;
  };
}
