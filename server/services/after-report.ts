import type { Actor } from '../../shared/domain/can/can';
import { AppError } from '../../shared/errors';
import type { CaseContent } from '../../shared/schemas/case';
import type { AfterInput, AfterLine, AfterOutcome, AfterView } from '../../shared/schemas/afterwards';
import type { Db } from '../db';
import {
  countWaiting,
  deleteWaitingOf,
  findAfterReport,
  insertAfterReport,
  listAcceptedReports,
  listWaitingReports,
  setAfterStatus,
} from '../repositories/after-repository';
import { appendCaseChanges } from '../repositories/case-change-repository';
import { getCase } from '../repositories/case-repository';
import { findOwner } from '../repositories/submission-links';
import { issueAfterKey, spendAfterKey } from './after-key';
import { appendLog } from './log/append-log';
import { monthOf } from './review/move-case';
import { requireForeign } from './review/require-decision';
import { inTransaction } from './submit-transaction';

/** More than this at once about one case is no news any more. */
const WAITING_MOST = 20;
const SHOWN_MOST = 100;

export type ReportInput = AfterInput & { now: Date; newId: () => string };

/** Reports what became of a published case, for who is signed in; it takes the place of what they have waiting about it. */
export function sendReport(db: Db, input: ReportInput & { actor: Actor }): Promise<AfterOutcome> {
  const { actor, ...report } = input;
  return inTransaction(db, async (tx) => {
    const refused = await whyNot(tx, report);
    if (refused !== null) return refused;
    const source = (await findOwner(tx, report.caseId)) === actor.id ? 'contributor' : 'reader';
    await deleteWaitingOf(tx, report.caseId, actor.id);
    await store(tx, report, { source, userId: actor.id });
    return { status: 'done', key: null };
  });
}

/** The same with the key of the case, for whoever repaired it and cut their link. The key is used up, and the next returned. */
export function sendByKey(db: Db, input: ReportInput & { key: string; newKey: () => string }): Promise<AfterOutcome> {
  const { key, newKey, ...report } = input;
  return inTransaction(db, async (tx) => {
    const refused = await whyNot(tx, report);
    if (refused !== null) return refused;
    if (!(await spendAfterKey(tx, report.caseId, key))) {
      return { status: 'refused', fields: { key: 'This key is not this case’s, or it was used already. Check it sign by sign.' } };
    }
    await store(tx, report, { source: 'contributor', userId: null });
    return { status: 'done', key: await issueAfterKey(tx, report.caseId, newKey()) };
  });
}

/** What was reported about a published case and accepted. Throws `case-not-found`. */
export async function getReportsOfCase(db: Db, caseId: string): Promise<AfterView[]> {
  await getPublished(db, caseId);
  return listAcceptedReports(db, caseId);
}

/** Reports that wait for a moderator. */
export function listForReview(db: Db): Promise<AfterLine[]> {
  return listWaitingReports(db, SHOWN_MOST);
}

export type AfterDecision = { actor: Actor; id: string; accept: boolean; now: Date };

/**
 * Accepts or declines a report; one that is accepted is told to all that follows what is published. Throws
 * `report-not-found` and, for one's own case or report, `own-submission`.
 */
export function decideReport(db: Db, { actor, id, accept, now }: AfterDecision): Promise<void> {
  return inTransaction(db, async (tx) => {
    const report = await findAfterReport(tx, id);
    if (report === null || report.status !== 'waiting') throw new AppError('report-not-found');
    await requireForeign(tx, actor, report.caseId);
    if (report.userId === actor.id) throw new AppError('own-submission');
    if (!(await setAfterStatus(tx, id, accept ? 'accepted' : 'declined'))) throw new AppError('report-not-found');
    if (accept) await appendCaseChanges(tx, [report.caseId]);
    const { kind, months, source } = report;
    const detail = { kind, months, source };
    const decided = accept ? 'afterwards-accepted' : 'afterwards-declined';
    await appendLog(tx, { at: now, kind: decided, actorId: actor.id, subject: { kind: 'report', id }, detail });
  });
}

async function getPublished(db: Db, caseId: string) {
  const record = await getCase(db, caseId);
  if (record.status !== 'accepted') throw new AppError('case-not-found');
  return record;
}

async function whyNot(db: Db, { caseId, months, now }: ReportInput): Promise<Extract<AfterOutcome, { status: 'refused' }> | null> {
  const { content } = await getPublished(db, caseId);
  const fault = (fields: Partial<Record<'kind' | 'months', string>>) => ({ status: 'refused' as const, fields });
  if (content.outcome !== 'resolved' && content.outcome !== 'partly-resolved') {
    return fault({ kind: 'This case did not end resolved: there is no repair that could hold or come back.' });
  }
  const passed = monthsSince(content, now);
  if (months > passed) {
    return fault({ months: passed < 1 ? 'The repair ended this month. Come back after a month.' : `The repair ended ${passed} months ago: write ${passed} at most.` });
  }
  if ((await countWaiting(db, caseId)) >= WAITING_MOST) {
    return fault({ kind: 'Many reports about this case wait for a moderator already. Try again later.' });
  }
  return null;
}

/** Whole months from the month in which a repair ended. */
function monthsSince({ month }: CaseContent, now: Date): number {
  const count = (text: string) => Number(text.slice(0, 4)) * 12 + Number(text.slice(5, 7));
  return count(monthOf(now)) - count(month);
}

type Whose = Pick<AfterView, 'source'> & { userId: string | null };

async function store(db: Db, { caseId, kind, months, now, newId }: ReportInput, { source, userId }: Whose): Promise<void> {
  await insertAfterReport(db, { id: newId(), caseId, kind, months, source, month: monthOf(now) }, userId);
}
