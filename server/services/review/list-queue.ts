import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { Actor } from '../../../shared/domain/can/can';
import type { QueueFilter, QueueLine } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { countOpenReports } from '../../repositories/case-reports';
import { countQueue, findNextFree, listQueue, type QueueRow } from '../../repositories/review-queue';
import { findWaitingPlace } from '../../repositories/waiting-cases';
import { claimView } from './claim-case';
import { daysBetween } from './days-between';

export const QUEUE_PAGE = 25;

type QueueQuestion = { actor: Actor; filter: QueueFilter; cursor: string | null; now: Date };

/** A page of the queue with its counts; `next` is the cursor of the following page. */
export async function queuePage(db: Db, model: CasebookModel, { actor, filter, cursor, now }: QueueQuestion) {
  const rows = await listQueue(db, { filter, after: readCursor(cursor), take: QUEUE_PAGE + 1 });
  const page = rows.slice(0, QUEUE_PAGE);
  const { byModel, ...counts } = await countQueue(db, now);
  const last = page.at(-1);
  return {
    lines: page.map((row) => lineOf(model, row, { actor, now })),
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

function lineOf({ words }: CasebookModel, row: QueueRow, { actor, now }: { actor: Actor; now: Date }): QueueLine {
  const device = row.boardSlug ?? row.modelSlug;
  return {
    id: row.caseId,
    again: row.status === 'resubmitted',
    days: daysBetween(row.since, now),
    device: words.devices.get(device)?.label ?? device,
    symptoms: row.symptoms.map((slug) => words.symptoms.get(slug)?.label ?? slug),
    causes: row.causes.map((slug) => words.causes.get(slug)?.label ?? slug),
    marks: row.marks,
    words: row.words,
    newcomer: row.newcomer,
    own: row.ownerId === actor.id,
    claim: claimView(row, actor, now, row.claimerName),
  };
}

function readCursor(cursor: string | null): { since: Date; caseId: string } | null {
  const [, time, caseId] = /^(\d{1,15})\.([a-z2-7]{16})$/.exec(cursor ?? '') ?? [];
  return time === undefined || caseId === undefined ? null : { since: new Date(Number(time)), caseId };
}
