import type { PrismaClient } from '../../prisma/generated/client';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { codedRecord } from '../../shared/domain/casebook/case-entry';
import { settingsToDocument } from '../../shared/domain/casebook/settings-document';
import { fitSettings } from '../../shared/stats/fit-settings';
import { liveRows } from '../../shared/stats/record-index';
import { compareKeys } from '../../shared/stats/record-keys';
import { type Settings, settingsHash } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { appendEvent } from '../repositories/event-log-repository';
import { saveSettings } from '../repositories/model-settings-repository';
import { keepSnapshotFresh } from './keep-snapshot-fresh';
import { loadCasebook } from './load-casebook';

/** Records over which the largest shift is looked for. */
const SHIFT_SAMPLE = 500;

export type FitOutcome = {
  /** Names the settings. */
  hash: string;
  /** Accepted cases they were fitted on. */
  records: number;
  /** Whether they differ from those in use before. */
  changed: boolean;
  /** Largest change of any cause's probability, 0 to 1, over the symptoms of up to 500 of the cases. */
  largestShift: number;
};

/** Fits the settings to the accepted records, stores them and puts them in use: a separate, deterministic job. */
export async function fitAndStore(
  db: PrismaClient,
  now: Date,
  { newId, actor }: { newId: () => string; actor: string },
): Promise<FitOutcome> {
  const casebook = await loadCasebook(db);
  const { model, settings: before } = casebook;
  const { coding } = model;
  const { index } = model;
  const rows = [...liveRows(index)].sort((a, b) => compareKeys(index.keys, a, b));
  const records = { length: rows.length, at: (i: number) => codedRecord(model, rows[i] as number) };
  const settings = fitSettings(coding.layout, records);
  const hash = settingsHash(settings);
  const document = settingsToDocument(coding, settings);
  await db.$transaction(async (tx) => {
    await saveSettings(tx, { hash, document, recordCount: records.length, fittedAt: now });
    const detail = `Fitted settings ${hash} on ${records.length} accepted cases.`;
    await appendEvent(tx, { id: newId(), at: now, kind: 'fit', actor, detail });
  });
  await keepSnapshotFresh(db, casebook);
  return { hash, records: records.length, changed: hash !== before.hash, largestShift: largestShift(model, settings) };
}

function largestShift(model: CasebookModel, settings: Settings): number {
  const refitted = createEstimator(model.coding.layout, model.counts, settings);
  let largest = 0;
  const rows = [...liveRows(model.index)];
  const step = Math.max(1, Math.floor(rows.length / SHIFT_SAMPLE));
  for (let i = 0; i < rows.length; i += step) {
    const { device, findings } = codedRecord(model, rows[i] as number);
    const seen = findings.filter((f) => f.step === 0);
    const before = model.estimator.probabilities(device, seen);
    refitted.probabilities(device, seen).forEach((p, cause) => {
      largest = Math.max(largest, Math.abs(p - (before[cause] as number)));
    });
  }
  return largest;
}
