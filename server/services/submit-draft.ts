import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { type AskedInForm, askedInForm } from '../../shared/domain/submission/asked-in-form';
import { openDetails } from '../../shared/domain/submission/draft-texts';
import { renameDraft } from '../../shared/domain/words/rename-draft';
import type { WordAliases } from '../../shared/domain/words/word-aliases';
import { type DraftDocument, draftDocumentSchema, type FoundDetail } from '../../shared/schemas/submission';
import type { Db } from '../db';
import { findCase } from '../repositories/case-repository';
import { listPhotosOfDraft } from '../repositories/photo-repository';
import { listLastRequestedChanges } from '../repositories/requested-changes';
import { countDrafts, findDraft, insertDraft, updateDraft } from '../repositories/submission-drafts';
import { detailsIn, withoutDetails } from './submit-details';

/** More unfinished cases than a bench has room for. */
export const DRAFTS_MOST = 30;

/**
 * `details` are still open: what is stored holds their suggestions. `gone`: there is no such draft any more (discarded or
 * submitted elsewhere), and nothing was stored. `full`: the account has as many drafts as it may.
 */
export type SaveOutcome =
  | { kind: 'saved'; savedAt: string; details: FoundDetail[] }
  | { kind: 'gone' }
  | { kind: 'full'; most: number };

export type SaveInput = { ownerId: string; id: string; isNew: boolean; document: DraftDocument; now: Date };

/** Stores a form for its owner, without the personal details in it that are not settled yet. */
export async function saveDraft(db: Db, model: CasebookModel, input: SaveInput): Promise<SaveOutcome> {
  const { ownerId, id, isNew, document, now } = input;
  const found = detailsIn(model, document);
  const stored = { id, document: JSON.stringify(withoutDetails(document, found)), updatedAt: now };
  // A first save whose answer was lost comes again: it is the same draft.
  if (!(await updateDraft(db, ownerId, stored))) {
    if (!isNew) return { kind: 'gone' };
    if ((await countDrafts(db, ownerId)) >= DRAFTS_MOST) return { kind: 'full', most: DRAFTS_MOST };
    await insertDraft(db, ownerId, { ...stored, caseId: null });
  }
  return { kind: 'saved', savedAt: now.toISOString(), details: openDetails(document, found) };
}

/** `asked`: the changes that a moderator asked for, where the draft holds changes to a case. */
export type OpenedDraft = { id: string; caseId: string | null; savedAt: string; document: DraftDocument; asked: AskedInForm[] };

/** A draft as its owner left it; null where there is none, or it is of a form that this program no longer knows. */
export async function openDraft(db: Db, aliases: WordAliases, ownerId: string, id: string): Promise<OpenedDraft | null> {
  const stored = await findDraft(db, ownerId, id);
  if (stored === null) return null;
  const parsed = draftDocumentSchema.safeParse(JSON.parse(stored.document));
  if (!parsed.success) return null;
  const document = { ...renameDraft(aliases, parsed.data), photos: await presentPhotos(db, id, parsed.data.photos) };
  const asked = stored.caseId === null ? [] : await askedOf(db, stored.caseId, document);
  return { id, caseId: stored.caseId, savedAt: stored.updatedAt.toISOString(), document, asked };
}

async function askedOf(db: Db, caseId: string, { steps }: DraftDocument): Promise<AskedInForm[]> {
  const [asked, record] = await Promise.all([listLastRequestedChanges(db, caseId), findCase(db, caseId)]);
  return askedInForm(asked, record?.content.steps ?? [], steps);
}

/** Photos as the form had them, without those that were taken out, and with those added after its last save. */
async function presentPhotos(db: Db, draftId: string, listed: DraftDocument['photos']): Promise<DraftDocument['photos']> {
  const there = await listPhotosOfDraft(db, draftId);
  const kept = listed.filter(({ id }) => there.some((photo) => photo.id === id));
  const added = there.filter(({ id }) => !kept.some((photo) => photo.id === id));
  return [...kept, ...added.map(({ id, alt }) => ({ id, alt }))];
}
