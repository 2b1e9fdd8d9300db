import { DECLINE_WORDS, type DecisionOutcome, type DeclineReason } from '../../../shared/schemas/review';
import { placeOfField } from '../../../shared/domain/submission/place-of-field';
import type { Db } from '../../db';
import type { AskedChange } from '../../../shared/domain/submission/asked-in-form';
import { insertRequestedChanges } from '../../repositories/requested-changes';
import { inTransaction } from '../submit-transaction';
import { appendLog } from '../log/append-log';
import { moveCase } from './move-case';
import { type DecisionInput, requireDecision } from './require-decision';

/** Asks whoever posted a case to change it, with a reason at each field. */
export function askForChanges(db: Db, input: DecisionInput & { asked: AskedChange[] }): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record, waitedDays } = await requireDecision(tx, 'request-changes', input);
    const { actor, id, now, asked } = input;
    const reason = asked.map(({ field, reason: why }) => `${placeOfField(field)}: ${why}`).join(' ');
    await moveCase(tx, record, { event: 'request-changes', now, reason });
    await insertRequestedChanges(tx, id, asked);
    const detail = { fields: asked.map(({ field }) => field), waitedDays };
    await appendLog(tx, { kind: 'case-changes-asked', actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
    return { status: 'done' };
  });
}

/** Declines a case; whoever posted it reads why. */
export function declineCase(db: Db, input: DecisionInput & { reason: DeclineReason; text: string }): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record, waitedDays } = await requireDecision(tx, 'decline', input);
    const { actor, id, now, reason, text } = input;
    const told = reason === 'other' ? text : `${DECLINE_WORDS[reason]} ${text}`.trim();
    await moveCase(tx, record, { event: 'decline', now, reason: told });
    const detail = { reason, waitedDays };
    await appendLog(tx, { kind: 'case-declined', actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
    return { status: 'done' };
  });
}
