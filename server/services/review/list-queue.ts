import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { Actor } from '../../../shared/domain/can/can';
import type { QueueFilter, QueueLine } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { countOpenReports } from '../../repositories/case-reports';
import { countQueue, findNewcomers, findNextFree, listQueue, type QueueRow } from '../../repositories/review-queue';
import { findWaitingPlace } from '../../repositories/waiting-cases';
import { claimView } from './claim-case';
import { daysBetween } from './days-between';

export const QUEUE_PAGE = 25;

type QueueQuestion = { actor: Actor; filter: QueueFilter; cursor: string | null; now: Date };

/** A page of the queue with its counts; `next` is the cursor of the following page. */
export async function queuePage(db: Db, model: CasebookModel, { actor, filter, cursor, now }: QueueQuestion) {
  const rows = await listQueue(db, { filter, after: readCursor(cursor), take: QUEUE_PAGE + 1 });
  const page = rows.slice(0, QUEUE_PAGE);
  const newcomers = await findNewcomers(
    db,
    page.map((row) => row.caseId),
  );
  const { byModel, ...counts } = await countQueue(db, now);
  const last = page.at(-1);
  return {
    lines: page.map((row) => lineOf(model, row, { actor, now, newcomer: newcomers.has(row.caseId) })),
    next: last && rows.length > QUEUE_PAGE ? `${last.since.getTime()}.${last.caseId}` : null,
    counts,
    reports: await countOpenReports(db),
    devices: [...byModel].map(([slug, waiting]) => ({ slug, label: model.words.devices.get(slug)?.label ?? slug, waiting })),
  };
}

/** The next case to look at under a filter: after the one named, else from the start. Null where none is free. */
export async function nextFree(
  db: Db,
  { actor, filter, afterId, now }: { actor: Actor; filter: QueueFilter; afterId: string | null; now: Date },
): Promise<string | null> {
  const place = afterId === null ? null : await findWaitingPlace(db, afterId);
  const question = { filter, userId: actor.id, now, not: afterId };
  const after = place === null || afterId === null ? null : { since: place.since, caseId: afterId };
  const found = await findNextFree(db, { ...question, after });
  return found ?? (after === null ? null : findNextFree(db, { ...question, after: null }));
}

type LineFacts = { actor: Actor; now: Date; newcomer: boolean };

function lineOf({ words }: CasebookModel, row: QueueRow, { actor, now, newcomer }: LineFacts): QueueLine {
  const { case: file } = row;
  const device = file.boardSlug ?? file.modelSlug;
  return {
    id: row.caseId,
    again: file.status === 'resubmitted',
    days: daysBetween(row.since, now),
    device: words.devices.get(device)?.label ?? device,
    symptoms: file.symptoms.map((s) => words.symptoms.get(s.symptomSlug)?.label ?? s.symptomSlug),
    causes: file.causes.map((c) => words.causes.get(c.causeSlug)?.label ?? c.causeSlug),
    marks: file._count.marks,
    words: file._count.proposals,
    newcomer,
    own: file.postedBy?.userId === actor.id,
    claim: claimView(row, actor, now, row.claimer?.name ?? null),
  };
}

function readCursor(cursor: string | null): { since: Date; caseId: string } | null {
  const [, time, caseId] = /^(\d{1,15})\.([a-z2-7]{16})$/.exec(cursor ?? '') ?? [];
  return time === undefined || caseId === undefined ? null : { since: new Date(Number(time)), caseId };
}
