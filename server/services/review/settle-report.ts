import type { Prisma } from '../../../prisma/generated/client';
import type { Actor } from '../../../shared/domain/can/can';
import { AppError } from '../../../shared/errors';
import type { DecisionOutcome, Settlement } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { findOpenReport, settleReports } from '../../repositories/case-reports';
import { inTransaction } from '../submit-transaction';
import { appendLog } from '../log/append-log';
import { requireForeign } from './require-decision';

type Settled = { actor: Actor; now: Date; settledAs: Settlement };

/** Settles every open report about a case with what was done to it. Returns the ids of those settled. */
export async function settleAll(tx: Prisma.TransactionClient, input: Settled & { id: string; text: string }): Promise<string[]> {
  const { actor, now, settledAs, id: caseId, text } = input;
  const settled = await settleReports(tx, { caseId }, { settledAs, note: text || null });
  for (const id of settled) {
    await appendLog(tx, {
      kind: 'report-settled',
      actorId: actor.id,
      at: now,
      subject: { kind: 'report', id },
      detail: { settledAs },
    });
  }
  return settled;
}

/** Leaves a published case as it is, in spite of a report. Throws `report-not-found` and `own-submission`. */
export function leaveAsIs(db: Db, input: { actor: Actor; reportId: string; now: Date; text: string }): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { actor, reportId, now, text } = input;
    const report = await findOpenReport(tx, reportId);
    if (report === null) throw new AppError('report-not-found');
    await requireForeign(tx, actor, report.caseId);
    await settleReports(tx, { id: reportId }, { settledAs: 'left', note: text || null });
    const subject = { kind: 'report' as const, id: reportId };
    await appendLog(tx, { kind: 'report-settled', actorId: actor.id, at: now, subject, detail: { settledAs: 'left' } });
    return { status: 'done' };
  });
}
