import { createHash } from 'node:crypto';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { usualReadings, type UsualPart } from '../../shared/domain/readings/usual-readings';
import { buildSnapshot, type CasebookSnapshot } from '../../shared/domain/snapshot/casebook-snapshot';
import type { Db } from '../db';
import { listCaseReadings } from '../repositories/board-readings';
import { listWorkingUnitsOfBoard } from '../repositories/working-unit-repository';
import { onOneState } from './on-one-state';

/** Everything of one device that a bench needs away from the network. */
export type BenchSnapshot = {
  casebook: CasebookSnapshot;
  /** Readings of working units of the board, and of units whose cause was at the very part; empty for a model. */
  working: UsualPart[];
  faulty: UsualPart[];
};

/** Taken snapshots by device, good until the model's counts change. */
const taken = new WeakMap<CasebookModel, Map<string, { revision: number; snapshot: CasebookSnapshot }>>();

/** The snapshot of a device with what was read on it; `version` names its contents. */
export async function benchSnapshot(db: Db, model: CasebookModel, device: string): Promise<{ version: string; snapshot: BenchSnapshot }> {
  const snapshot = { casebook: await casebookSnapshot(model, device), ...(await readingsOf(db, model, device)) };
  return { version: hashOf(snapshot), snapshot };
}

/** Vocabulary and catalogue, with the name of their contents. */
export function benchWords({ coding: { vocabulary, catalogue } }: CasebookModel) {
  return { version: hashOf([vocabulary, catalogue]), words: { vocabulary, catalogue } };
}

async function casebookSnapshot(model: CasebookModel, device: string): Promise<CasebookSnapshot> {
  const devices = taken.get(model) ?? new Map<string, { revision: number; snapshot: CasebookSnapshot }>();
  taken.set(model, devices);
  const before = devices.get(device);
  if (before?.revision === model.counts.revision) return before.snapshot;
  const made = await onOneState(model, function* () {
    const { revision } = model.counts;
    return { revision, snapshot: yield* buildSnapshot(model, device) };
  });
  devices.set(device, made);
  return made.snapshot;
}

async function readingsOf(db: Db, model: CasebookModel, device: string): Promise<Omit<BenchSnapshot, 'casebook'>> {
  if (model.words.devices.get(device)?.level !== 'board') return { working: [], faulty: [] };
  const cases = await listCaseReadings(db, device);
  // Of a unit with a fault only the parts that were the cause count: its other parts say nothing about faulty ones.
  const faulty = cases.map(({ id, month, readings, designators }) => ({
    id,
    device,
    month,
    readings: readings.filter((reading) => designators.includes(reading.designator)),
  }));
  return { working: usualReadings(await listWorkingUnitsOfBoard(db, device)), faulty: usualReadings(faulty) };
}

function hashOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('hex').slice(0, 16);
}
