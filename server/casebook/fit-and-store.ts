import { settingsToDocument } from '../../shared/domain/casebook/settings-document';
import { fitSettings } from '../../shared/stats/fit-settings';
import { settingsHash } from '../../shared/stats/settings';
import type { PrismaClient } from '../../prisma/generated/client';
import { appendEvent } from '../repositories/event-log-repository';
import { saveSettings } from '../repositories/model-settings-repository';
import { loadCasebook } from './load-casebook';

export type FitInput = { now: Date; newId: () => string; actor: string };

/**
 * Fits the settings of the model to the accepted records, stores them and puts them in use; a separate, deterministic
 * job. Returns the hash that names them, the records they were fitted on, and whether they differ from those before.
 */
export async function fitAndStore(db: PrismaClient, { now, newId, actor }: FitInput) {
  const { model, settings: before } = await loadCasebook(db);
  const { coding } = model;
  const records = [...model.entries.values()].sort((a, b) => (a.id < b.id ? -1 : 1)).map((entry) => entry.coded);
  const settings = fitSettings(coding.layout, records);
  const hash = settingsHash(settings);
  await db.$transaction(async (tx) => {
    await saveSettings(tx, { hash, document: settingsToDocument(coding, settings), recordCount: records.length, fittedAt: now });
    const detail = `Fitted settings ${hash} on ${records.length} accepted cases.`;
    await appendEvent(tx, { id: newId(), at: now, kind: 'fit', actor, detail });
  });
  return { hash, records: records.length, changed: hash !== before.hash, model, settings };
}
