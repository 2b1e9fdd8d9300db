import type { PrismaClient } from '../../prisma/generated/client';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { settingsToDocument } from '../../shared/domain/casebook/settings-document';
import { fitSettings } from '../../shared/stats/fit-settings';
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
  const records = [...model.entries.values()].sort((a, b) => (a.id < b.id ? -1 : 1)).map((entry) => entry.coded);
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
  const step = Math.max(1, Math.floor(model.entries.size / SHIFT_SAMPLE));
  [...model.entries.values()].forEach(({ coded }, index) => {
    if (index % step !== 0) return;
    const seen = coded.findings.filter((f) => f.step === 0);
    const before = model.estimator.probabilities(coded.device, seen);
    refitted.probabilities(coded.device, seen).forEach((p, cause) => {
      largest = Math.max(largest, Math.abs(p - (before[cause] as number)));
    });
  });
  return largest;
}
