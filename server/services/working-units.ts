import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { type Actor, can } from '../../shared/domain/can/can';
import { checkWorkingUnit } from '../../shared/domain/readings/check-working-unit';
import { AppError } from '../../shared/errors';
import type { Reading, WorkingUnitStatus } from '../../shared/schemas/case';
import type { Db } from '../db';
import { insertWorkingUnits } from '../repositories/working-unit-repository';
import {
  changeUnitStatus,
  findReviewedUnit,
  findSameUnit,
  insertWorkingUnitLink,
  listUnitsOfOwner,
  listUnitsOfStatus,
  type ReviewedUnit,
} from '../repositories/working-unit-review';
import { appendLog } from './log/append-log';
import { inTransaction } from './submit-transaction';

/** Most units shown to a moderator at once. */
const QUEUE = 50;

export type WorkingUnitOutcome = { kind: 'submitted' | 'already'; id: string } | { kind: 'problems'; problems: string[] };

type Input = { actor: Actor; device: string; readings: Reading[]; now: Date; newId: () => string };

/** Sends the readings of a working unit to review. The same readings again in one month are the same submission. */
export async function submitWorkingUnit(db: Db, model: CasebookModel, input: Input): Promise<WorkingUnitOutcome> {
  const { actor, device, readings, now, newId } = input;
  const problems = checkWorkingUnit(model.words.devices.get(device), readings);
  if (problems.length > 0) return { kind: 'problems', problems };
  const content = { device, month: now.toISOString().slice(0, 7), readings };
  return inTransaction(db, async (tx): Promise<WorkingUnitOutcome> => {
    const same = await findSameUnit(tx, content, actor.id);
    if (same !== null) {
      if (same.status === 'withdrawn') await changeUnitStatus(tx, same.id, { from: 'withdrawn', to: 'submitted' });
      return { kind: 'already', id: same.id };
    }
    const id = newId();
    await insertWorkingUnits(tx, [{ id, ...content }], undefined, 'submitted');
    await insertWorkingUnitLink(tx, id, actor.id);
    return { kind: 'submitted', id };
  });
}

/** Takes readings back before they are published. Throws `submission-not-found` and `move-not-possible`. */
export async function withdrawWorkingUnit(db: Db, actor: Actor, id: string): Promise<void> {
  const unit = await findReviewedUnit(db, id);
  if (unit === null || unit.ownerId !== actor.id) throw new AppError('submission-not-found');
  await moveTo(db, unit, 'withdrawn');
}

/** Publishes or declines readings that wait, and says so in the log. Nobody decides on their own. */
export function decideWorkingUnit(
  db: Db,
  actor: Actor,
  { id, accept, now }: { id: string; accept: boolean; now: Date },
): Promise<void> {
  return inTransaction(db, async (tx) => {
    const unit = await findReviewedUnit(tx, id);
    if (unit === null) throw new AppError('submission-not-found');
    if (!can(actor, 'submission.decide', { ownerId: unit.ownerId })) throw new AppError('not-allowed');
    await moveTo(tx, unit, accept ? 'accepted' : 'declined');
    const detail = { readings: unit.readings.length };
    const subject = { kind: 'working-unit', id } as const;
    await appendLog(tx, { at: now, kind: accept ? 'unit-accepted' : 'unit-declined', actorId: actor.id, subject, detail });
  });
}

async function moveTo(db: Db, unit: ReviewedUnit, to: WorkingUnitStatus): Promise<void> {
  const moved = unit.status === 'submitted' && (await changeUnitStatus(db, unit.id, { from: 'submitted', to }));
  if (!moved) throw new AppError('move-not-possible', { detail: `It is ${unit.status}.` });
}

/** Readings that wait for a decision, each with whether this moderator may decide; who sent them is not said. */
export async function waitingWorkingUnits(db: Db, actor: Actor) {
  const units = await listUnitsOfStatus(db, 'submitted', QUEUE);
  return units.map(({ ownerId, status: _, ...unit }) => ({ ...unit, mayDecide: can(actor, 'submission.decide', { ownerId }) }));
}

/** What an account contributed and is still linked to. */
export async function ownWorkingUnits(db: Db, userId: string) {
  return (await listUnitsOfOwner(db, userId)).map(({ ownerId: _, ...unit }) => unit);
}
