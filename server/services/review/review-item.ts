import type { Actor } from '../../../shared/domain/can/can';
import { caseView } from '../../../shared/domain/casebook/case-view';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { checkContent } from '../../../shared/domain/casebook/check-content';
import { contradictionsIn } from '../../../shared/domain/review/contradictions';
import { nearestWords } from '../../../shared/domain/review/nearest-words';
import { weighCase, type Weighed } from '../../../shared/domain/review/weigh-case';
import { CASE_EVENTS, mayMove } from '../../../shared/domain/submission/next-status';
import { AppError } from '../../../shared/errors';
import { contentHash } from '../../content-hash';
import type { CaseRecord } from '../../../shared/schemas/case';
import { type DraftDocument, PROPOSAL_KINDS } from '../../../shared/schemas/submission';
import type { Db } from '../../db';
import { listReportsOf } from '../../repositories/case-reports';
import { findCase } from '../../repositories/case-repository';
import { findCaseStanding } from '../../repositories/case-standing';
import { listRevisions } from '../../repositories/case-revisions';
import { listPhotosOfCase } from '../../repositories/photo-repository';
import { isFromNewcomer } from '../../repositories/review-queue';
import { findFirstReport, listSecondReports } from '../../repositories/second-reports';
import { listMarks, listProposals } from '../../repositories/submission-contents';
import { listStatusChanges } from '../../repositories/submission-history';
import { draftOfStored } from '../submit-changes';
import { claimOf } from './claim-case';
import { revisionDiffs } from './revision-diffs';
import { findDuplicates, type LikelyDuplicate } from './find-duplicates';

/** What the machine found about a case; null where it names what the vocabulary does not hold. */
type Machine = { weighed: Weighed; duplicates: LikelyDuplicate[] } | null;

/**
 * Everything that a moderator sees of one case: as it would be published, and beside it what the machine found. Throws
 * `review-not-found`.
 */
export async function reviewItem(db: Db, model: CasebookModel, input: { actor: Actor; id: string; now: Date }) {
  const { actor, id } = input;
  const record = await findCase(db, id);
  if (record === null || record.status === 'draft') throw new AppError('review-not-found');
  const standing = await findCaseStanding(db, id);
  const ownerId = standing?.ownerId ?? null;
  const unknown = checkContent(model.words, record.content);
  return {
    view: caseView(model.words, record),
    seen: contentHash(record.content),
    own: ownerId === actor.id,
    newcomer: await isFromNewcomer(db, id),
    may: CASE_EVENTS.filter((event) => mayMove(actor, event, { status: record.status, ownerId })),
    claim: standing?.place ? await claimOf(db, standing.place, input) : null,
    history: await listStatusChanges(db, id),
    marks: await listMarks(db, id),
    proposals: (await listProposals(db, id)).map(({ kind, word, meaning }) => {
      const known = PROPOSAL_KINDS.find((other) => other === kind);
      return { kind, word, meaning, nearest: known ? nearestWords(model.words, { kind: known, word }) : [] };
    }),
    unknown,
    contradictions: contradictionsIn(model.words, record.content),
    machine: unknown.length > 0 ? null : await machineOf(db, model, record),
    revisions: revisionDiffs(model, await listRevisions(db, id)),
    reports: await listReportsOf(db, id),
    secondOf: await findFirstReport(db, id),
    seconds: await listSecondReports(db, id),
  };
}

async function machineOf(db: Db, model: CasebookModel, record: CaseRecord): Promise<Machine> {
  return { weighed: weighCase(model, record.content), duplicates: await findDuplicates(db, model, record) };
}

type EditStart = { document: DraftDocument; seen: string; published: boolean };

/**
 * The form that a moderator changes a case in: its words, proposals and kept details, and what it was read from. Throws
 * `review-not-found`.
 */
export async function editForm(db: Db, id: string, newKey: () => string): Promise<EditStart> {
  const record = await findCase(db, id);
  if (record === null || record.status === 'draft') throw new AppError('review-not-found');
  const photos = await listPhotosOfCase(db, id);
  return { document: await draftOfStored(db, { ...record, photos }, newKey), seen: contentHash(record.content), published: record.status === 'accepted' };
}
