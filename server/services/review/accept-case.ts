import type { Prisma } from '../../../prisma/generated/client';
import { checkContent } from '../../../shared/domain/casebook/check-content';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { LogKind } from '../../../shared/domain/log/log-kinds';
import type { CaseContent, CaseRecord } from '../../../shared/schemas/case';
import type { DecisionOutcome } from '../../../shared/schemas/review';
import type { DraftDocument } from '../../../shared/schemas/submission';
import type { Db } from '../../db';
import { keepRevision } from '../../repositories/case-revisions';
import { replaceContent, replaceReviewNotes } from '../../repositories/submission-contents';
import { checkDocument } from '../submit-check';
import { inTransaction } from '../submit-transaction';
import { appendLog } from '../log/append-log';
import { moveCase, monthOf } from './move-case';
import { type Decided, type DecisionInput, requireDecision } from './require-decision';
import { settleAll } from './settle-report';

export type EditedInput = DecisionInput & { document: DraftDocument; text: string };

/**
 * Publishes a case as it stands: status, history, revision, change feed and log in one transaction. Nothing happens, and
 * what is wrong comes back, where it names what the vocabulary does not hold.
 */
export function acceptCase(db: Db, model: CasebookModel, input: DecisionInput): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record, waitedDays } = await requireDecision(tx, 'accept', input);
    const problems = checkContent(model.words, record.content);
    if (problems.length > 0) return { status: 'problems', problems };
    await publish(tx, { record, waitedDays }, input, { kind: 'case-accepted', reason: null });
    return { status: 'done' };
  });
}

/** Publishes a case with a moderator's changes, which whoever posted it sees beside their own words. */
export function acceptEdited(db: Db, model: CasebookModel, input: EditedInput): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record, waitedDays } = await requireDecision(tx, 'accept', input);
    const checked = await rewrite(tx, model, record, input);
    if ('status' in checked) return checked;
    const changed = { ...record, content: checked.content };
    await publish(tx, { record: changed, waitedDays }, input, {
      kind: 'case-accepted-edited',
      reason: input.text || null,
    });
    return { status: 'done' };
  });
}

/** Gives a published case a new revision; the old ones are kept. Open reports about it are settled with it. */
export function correctCase(db: Db, model: CasebookModel, input: EditedInput): Promise<DecisionOutcome> {
  return inTransaction(db, async (tx) => {
    const { record } = await requireDecision(tx, 'correct', input);
    const checked = await rewrite(tx, model, record, input);
    if ('status' in checked) return checked;
    await moveCase(tx, record, { event: 'correct', now: input.now, reason: input.text });
    await settleAll(tx, { ...input, settledAs: 'corrected' });
    const { actor, id, now } = input;
    const detail = { revision: checked.revision };
    await appendLog(tx, { kind: 'case-corrected', actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
    return { status: 'done' };
  });
}

async function publish(
  tx: Db,
  { record, waitedDays }: Decided,
  input: DecisionInput,
  how: { kind: LogKind; reason: string | null },
): Promise<void> {
  const { actor, id, now } = input;
  const revision = await keepRevision(tx, id, { content: record.content, writer: 'contributor', month: monthOf(now) });
  await moveCase(tx, record, { event: 'accept', now, reason: how.reason });
  const detail = { revision, waitedDays };
  await appendLog(tx, { kind: how.kind, actorId: actor.id, at: now, subject: { kind: 'case', id }, detail });
}

type Rewritten = { content: CaseContent; revision: number };

/** Puts what a form means in place of a case's content, both kept as revisions. */
async function rewrite(
  tx: Prisma.TransactionClient,
  model: CasebookModel,
  { id, status, content }: CaseRecord,
  { document, now }: EditedInput,
): Promise<Rewritten | Exclude<DecisionOutcome, { status: 'done' | 'refused' }>> {
  const checked = checkDocument(model, { document, now });
  if ('kind' in checked) {
    return checked.kind === 'problems'
      ? { status: 'problems', problems: checked.problems }
      : { status: 'details', details: checked.details };
  }
  const month = monthOf(now);
  await keepRevision(tx, id, { content, writer: 'contributor', month });
  const next = checked.content;
  const revision = await keepRevision(tx, id, { content: next, writer: 'moderator', month });
  await replaceContent(tx, id, status, next);
  await replaceReviewNotes(tx, id, checked.proposals, checked.marks);
  return { content: next, revision };
}
