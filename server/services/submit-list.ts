import { caseView } from '../../shared/domain/casebook/case-view';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import type { Actor } from '../../shared/domain/can/can';
import { CASE_EVENTS, type CaseEvent, mayMove } from '../../shared/domain/submission/next-status';
import type { CaseView } from '../../shared/schemas/case-view';
import { draftDocumentSchema } from '../../shared/schemas/submission';
import type { PhotoView } from '../../shared/schemas/photo';
import type { Db } from '../db';
import { readPhotoFile } from '../photos/photo-files';
import { listReportsOf } from '../repositories/after-repository';
import { findCase } from '../repositories/case-repository';
import { listRevisions } from '../repositories/case-revisions';
import { listProposals, type StoredProposal } from '../repositories/submission-contents';
import { listPhotosOfCase, listPhotosOfDraft } from '../repositories/photo-repository';
import { listDrafts } from '../repositories/submission-drafts';
import { listStatusChanges, type StatusChange } from '../repositories/submission-history';
import { listPosted } from '../repositories/submission-links';
import { REMOVABLE } from './submit-changes';
import type { PhotoPlace } from './photo-tidy';
import { type RevisionDiff, revisionDiffs } from './review/revision-diffs';

/** A draft on its owner's list. `caseId`: the case whose changes it holds. */
export type DraftLine = {
  id: string;
  caseId: string | null;
  savedAt: string;
  device: string | null;
  symptoms: string[];
  steps: number;
};

/** A submission on its owner's list, with how it came to stand where it does, what a moderator edited, and what can be done. */
export type SubmissionLine = {
  view: CaseView;
  history: StatusChange[];
  proposals: StoredProposal[];
  may: CaseEvent[];
  mayRemove: boolean;
  edits: RevisionDiff[];
};

/** Everything that an account is writing or has posted and is still linked to. */
export async function listMine(db: Db, model: CasebookModel, actor: Actor) {
  const submissions: SubmissionLine[] = [];
  for (const { id } of await listPosted(db, actor.id)) {
    const record = await findCase(db, id);
    if (record === null) continue;
    submissions.push({
      view: caseView(model.words, record),
      history: await listStatusChanges(db, id),
      proposals: await listProposals(db, id),
      edits: revisionDiffs(model, await listRevisions(db, id)).filter(({ writer }) => writer === 'moderator'),
      may: CASE_EVENTS.filter((event) => mayMove(actor, event, { status: record.status, ownerId: actor.id })),
      mayRemove: REMOVABLE.includes(record.status),
    });
  }
  return { drafts: (await listDrafts(db, actor.id)).map((draft) => draftLine(model, draft)), submissions };
}

function draftLine(model: CasebookModel, draft: Awaited<ReturnType<typeof listDrafts>>[number]): DraftLine {
  const { data } = draftDocumentSchema.safeParse(JSON.parse(draft.document));
  const present = data?.symptoms.filter((s) => s.present) ?? [];
  return {
    id: draft.id,
    caseId: draft.caseId,
    savedAt: draft.updatedAt.toISOString(),
    device: model.words.devices.get(data?.device ?? '')?.label ?? null,
    symptoms: present.map((s) => model.words.symptoms.get(s.symptom)?.label ?? s.symptom),
    steps: data?.steps.length ?? 0,
  };
}

/** What the site holds of an account's cases: its drafts, and every case that is still linked to it, whole. */
export async function postedData(place: PhotoPlace, userId: string) {
  const { db } = place;
  const drafts = [];
  for (const { id, caseId, document, updatedAt } of await listDrafts(db, userId)) {
    drafts.push({
      id,
      changesTo: caseId,
      savedAt: updatedAt.toISOString(),
      document: JSON.parse(document) as unknown,
      photos: await withPictures(place, await listPhotosOfDraft(db, id)),
    });
  }
  const cases = [];
  for (const { id, status } of await listPosted(db, userId)) {
    const record = await findCase(db, id);
    cases.push({
      id,
      status,
      content: record?.content ?? null,
      history: await listStatusChanges(db, id),
      proposedWords: await listProposals(db, id),
      photos: await withPictures(place, await listPhotosOfCase(db, id)),
    });
  }
  const reportsAfterwards = (await listReportsOf(db, userId)).map(({ id: _, ...report }) => report);
  return { drafts, cases, reportsAfterwards };
}

/** Photos with their pictures, as data addresses that a browser opens (RFC 2397). */
async function withPictures({ photoFolder }: PhotoPlace, photos: readonly PhotoView[]) {
  const whole = [];
  for (const photo of photos) {
    const bytes = await readPhotoFile(photoFolder, photo.id, 'large');
    whole.push({ ...photo, picture: bytes && `data:image/webp;base64,${Buffer.from(bytes).toString('base64')}` });
  }
  return whole;
}
