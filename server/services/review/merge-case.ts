import type { DecisionOutcome } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { findCase } from '../../repositories/case-repository';
import { linkSecondReport } from '../../repositories/second-reports';
import { inTransaction } from '../submit-transaction';
import { appendLog } from '../log/append-log';
import { moveCase } from './move-case';
import { type DecisionInput, requireDecision } from './require-decision';

/** Takes a waiting case as a second report of a published one: that one says so, and the figures count one record. */
export function mergeCase(db: Db, input: DecisionInput & { into: string }): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record, waitedDays } = await requireDecision(tx, 'merge', input);
    const { actor, id, now, into } = input;
    const first = await findCase(tx, into);
    if (first?.status !== 'accepted' || into === id) {
      return { status: 'refused', fields: { into: 'Choose a case that is published at the moment.' } };
    }
    await moveCase(tx, record, { event: 'merge', now, reason: `It tells the same repair as case ${into}.` });
    await linkSecondReport(tx, id, into);
    const detail = { waitedDays };
    await appendLog(tx, { kind: 'case-merged', actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
    return { status: 'done' };
  });
}
