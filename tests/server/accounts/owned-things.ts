import type { PrismaClient } from '../../../prisma/generated/client';
import { contentHash } from '../../../server/content-hash';
import { randomCaseId } from '../../../server/ids';
import { findCase } from '../../../server/repositories/case-repository';
import { acceptCase } from '../../../server/services/review/accept-case';
import { reportCase } from '../../../server/services/review/report-case';
import { askForChanges, declineCase } from '../../../server/services/review/turn-down';
import { submitCase } from '../../../server/services/submit-case';
import { submitWorkingUnit } from '../../../server/services/working-units';
import type { Actor } from '../../../shared/domain/can/can';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { fullForm } from '../submission/posting';

const now = new Date('2026-03-04T05:06:07Z');
/** Decides on everything that is made here; nothing is theirs. */
export const JUDGE: Actor = { id: 'judge', role: 'moderator' };

/** Makes things that belong to an account, each another one. */
export function thingsIn(db: PrismaClient, model: CasebookModel) {
  let number = 0;

  const form = () => fullForm({ narrative: `Told for the ${++number}th time: a new crystal cured it.` });

  /** A case that waits, with what a decision about it needs. */
  const waiting = async (ownerId: string) => {
    const actor = { id: ownerId, role: 'contributor' } as const;
    const sent = await submitCase(db, model, {
      actor,
      draftId: null,
      document: form(),
      now,
      newId: randomCaseId,
      newKey: randomCaseId,
    });
    if (sent.kind !== 'submitted') throw new Error(JSON.stringify(sent));
    return seen(sent.id);
  };

  const seen = async (id: string) => {
    const record = await findCase(db, id);
    if (record === null) throw new Error(`There is no case ${id}.`);
    return { id, seen: contentHash(record.content) };
  };

  const judged = async (ownerId: string, how: 'accept' | 'decline' | 'ask') => {
    const decided = { ...(await waiting(ownerId)), actor: JUDGE, now };
    if (how === 'accept') await acceptCase(db, model, decided);
    if (how === 'decline') await declineCase(db, { ...decided, reason: 'too-little', text: '' });
    if (how === 'ask') await askForChanges(db, { ...decided, asked: [{ field: 'narrative', reason: 'Say more.' }] });
    return seen(decided.id);
  };

  const draft = async (ownerId: string) => {
    const id = randomCaseId();
    const document = form();
    await db.draft.create({ data: { id, ownerId, document: JSON.stringify(document), updatedAt: now } });
    return { id, document };
  };

  const photo = async (place: { draftId: string } | { caseId: string }) => {
    const id = randomCaseId();
    await db.photo.create({ data: { id, ...place, position: 0, altText: 'A board', width: 2, height: 2 } });
    return id;
  };

  const unit = async (ownerId: string) => {
    const readings = [{ designator: 'U1', pin: '3', state: null, value: 4 + ++number / 1000, unit: 'V' as const }];
    const actor = { id: ownerId, role: 'contributor' } as const;
    const sent = await submitWorkingUnit(db, model, { actor, device: 'quellbrook-8-rev-a', readings, now, newId: randomCaseId });
    if (sent.kind !== 'submitted') throw new Error(JSON.stringify(sent));
    return sent.id;
  };

  /** An open report about a published case. */
  const reported = async (ownerId: string) => {
    const { id } = await judged(ownerId, 'accept');
    await reportCase(db, model, { id, reason: 'wrong', text: 'The part is another one there.', now, newId: randomCaseId });
    return (await db.caseReport.findFirstOrThrow({ where: { caseId: id } })).id;
  };

  /** A report of how a repair held, which waits. */
  const afterwards = async (ownerId: string) => {
    const { id: caseId } = await judged(ownerId, 'accept');
    const id = randomCaseId();
    await db.afterReport.create({
      data: { id, caseId, kind: 'held', months: 6, source: 'reader', month: '2026-03', status: 'waiting' },
    });
    return id;
  };

  return { form, waiting, judged, draft, photo, unit, reported, afterwards };
}

export type Things = ReturnType<typeof thingsIn>;
