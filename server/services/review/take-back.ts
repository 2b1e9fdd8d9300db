import { checkContent } from '../../../shared/domain/casebook/check-content';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { nextStatus } from '../../../shared/domain/submission/next-status';
import type { DecisionOutcome } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { unlinkSecondReport } from '../../repositories/second-reports';
import { inTransaction } from '../submit-transaction';
import { appendLog } from '../log/append-log';
import { moveCase } from './move-case';
import { type DecisionInput, requireDecision } from './require-decision';
import { settleAll } from './settle-report';

/** Takes a published case back: it leaves figures and search at once. Open reports about it are settled with it. */
export function retractPublished(db: Db, input: DecisionInput & { text: string }): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record } = await requireDecision(tx, 'retract', input);
    const { actor, id, now, text } = input;
    await moveCase(tx, record, { event: 'retract', now, reason: text });
    const settled = await settleAll(tx, { ...input, settledAs: 'retracted' });
    const detail = { reports: settled.length };
    await appendLog(tx, { kind: 'case-retracted', actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
    return { status: 'done' };
  });
}

/** Undoes a decision: a retracted case is published again, any other goes back into the queue. */
export function restoreCase(db: Db, model: CasebookModel, input: DecisionInput): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record } = await requireDecision(tx, 'restore', input);
    const { actor, id, now } = input;
    const to = nextStatus(record.status, 'restore');
    const problems = to === 'accepted' ? checkContent(model.words, record.content) : [];
    if (problems.length > 0) return { status: 'problems', problems };
    if (record.status === 'merged') await unlinkSecondReport(tx, id);
    await moveCase(tx, record, { event: 'restore', now, reason: null });
    const detail = { from: record.status, to };
    await appendLog(tx, { kind: 'case-restored', actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
    return { status: 'done' };
  });
}
