import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { DETAIL_LABELS, type DetailKind } from '../../../shared/domain/anonymise/personal-detail';
import { caseView } from '../../../shared/domain/casebook/case-view';
import { AppError } from '../../../shared/errors';
import type { CaseView } from '../../../shared/schemas/case-view';
import type { ReportReason } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { type CaseReport, insertReport, listOpenReports } from '../../repositories/case-reports';
import { findCase, getCase } from '../../repositories/case-repository';
import { appendLog } from '../log/append-log';
import { personalDetailsIn } from '../submit-details';
import { inTransaction } from '../submit-transaction';
import { monthOf } from './move-case';

export type ReportInput = { id: string; reason: ReportReason; text: string; now: Date; newId: () => string };
type ReportOutcome = { status: 'done' } | { status: 'refused'; fields: { text: string } };

/** Tells the moderators what is wrong with a published case. Who said so is not kept. Throws `case-not-found`. */
export async function reportCase(db: Db, model: CasebookModel, input: ReportInput): Promise<ReportOutcome> {
  const { id: caseId, reason, text, now, newId } = input;
  if ((await getCase(db, caseId)).status !== 'accepted') throw new AppError('case-not-found');
  const sure = personalDetailsIn(model, text).find((detail) => detail.certainty === 'direct');
  if (sure) {
    const what = DETAIL_LABELS[sure.kind as DetailKind] ?? 'personal detail';
    return { status: 'refused', fields: { text: `“${sure.text}” looks like a ${what}: say where it stands instead.` } };
  }
  return inTransaction(db, async (tx) => {
    const id = newId();
    const isNew = await insertReport(tx, { id, caseId, reason, text, month: monthOf(now), since: now });
    const subject = { kind: 'report' as const, id };
    if (isNew) await appendLog(tx, { kind: 'case-reported', actorId: null, at: now, subject, detail: { reason } });
    return { status: 'done' };
  });
}

export type ReportLine = { report: CaseReport; view: CaseView };
const REPORT_PAGE = 25;

/** A page of the open reports, the oldest first, each with its case as it stands; `next` is the cursor of the following page. */
export async function reportPage(db: Db, model: CasebookModel, cursor: string | null) {
  const open = await listOpenReports(db, { after: cursor, take: REPORT_PAGE + 1 });
  const lines: ReportLine[] = [];
  for (const report of open.slice(0, REPORT_PAGE)) {
    const record = await findCase(db, report.caseId);
    if (record !== null) lines.push({ report, view: caseView(model.words, record) });
  }
  return { lines, next: open.length > REPORT_PAGE ? (open[REPORT_PAGE - 1]?.id ?? null) : null };
}
