import { setImmediate as breath } from 'node:timers/promises';
import { addCase, buildCasebookModel, type CasebookModel, noteCameBack } from '../../shared/domain/casebook/casebook-model';
import type { Coding } from '../../shared/domain/coding/coding';
import { settingsFromDocument } from '../../shared/domain/casebook/settings-document';
import { AppError } from '../../shared/errors';
import { defaultSettings, settingsHash } from '../../shared/stats/settings';
import type { Db } from '../db';
import { inSlices } from '../event-loop/take-turns';
import { listCameBack } from '../repositories/after-repository';
import { findNewestChange } from '../repositories/case-change-repository';
import { countCases, streamCases, findCases } from '../repositories/case-repository';
import { findCatalogue } from '../repositories/catalogue-repository';
import { findNewestReload, hasEvent } from '../repositories/event-log-repository';
import { loadVocabulary } from '../repositories/load-vocabulary';
import { readWordAliases } from '../repositories/word-edit-repository';
import { findNewestSettings } from '../repositories/model-settings-repository';
import { countWorkingUnits } from '../repositories/working-unit-repository';
import { getLogger } from '../watching/logger';
import { followChanges } from './follow-changes';
import { isSnapshotFault, LEAST_CASES, type ReadSnapshot, readSnapshot } from './model-snapshot';

/** The accepted records in memory, ready to be asked, and what is known of how they came there. */
export type Casebook = {
  model: CasebookModel;
  /** `fittedAt` null: nothing was fitted yet, the defaults are in use. */
  settings: { hash: string; fittedAt: Date | null };
  workingUnits: number;
  /** Whether the corpus is the invented demo world. */
  demo: boolean;
  /** Newest event that called for a load when this was loaded: another one means that it is out of date. */
  loadedFor: string | null;
  /** Newest change of the feed that the model knows of. */
  changeSeq: number;
  /** Newest change that the snapshot beside the database knows of; null where there is no snapshot of use. */
  snapshotSeq: number | null;
  /** What still comes from the snapshot when it is needed; null where everything is in memory. */
  rest: ReadSnapshot['rest'];
};

/**
 * Reads vocabulary, catalogue, fitted settings and the accepted cases into memory: from the snapshot beside the database and
 * what has changed since, or else every case. Throws `casebook-empty` where no device is stored.
 * @param how.lazily answer as soon as possible: what the first answer does not need is read from the snapshot later, by `rest`
 * @param how.renewAside writes the snapshot anew where nobody has to wait for it, for when the one there is of no use; false where
 *   that could not be done, so that every case is read here
 */
export async function loadCasebook(db: Db, how: { lazily?: boolean; renewAside?: () => Promise<boolean> } = {}): Promise<Casebook> {
  // Read first: what is stored meanwhile then calls for another load.
  const loadedFor = await findNewestReload(db);
  const catalogue = await findCatalogue(db);
  if (catalogue === null) throw new AppError('casebook-empty');
  // The database answers without waiting: the breaths are for whoever else asks this process.
  await breath();
  const vocabulary = await loadVocabulary(db);
  await breath();
  const aliases = await readWordAliases(db);
  const stored = await findNewestSettings(db);
  let fittedAt: Date | null = null;
  const settingsFor = (coding: Coding) => {
    const settings = stored && settingsFromDocument(coding, stored.document);
    if (settings) fittedAt = stored.fittedAt;
    return settings ?? defaultSettings(coding.layout);
  };
  const empty = await inSlices(buildCasebookModel(vocabulary, catalogue, settingsFor, aliases));
  const counted = (await fromSnapshot(db, empty, how.lazily ?? false)) ?? (await renewed(db, empty, how.renewAside)) ?? (await fromDatabase(db, empty));
  return {
    ...counted,
    settings: { hash: settingsHash(empty.settings), fittedAt },
    workingUnits: await countWorkingUnits(db),
    demo: await hasEvent(db, 'seed'),
    loadedFor,
  };
}

type Counted = Pick<Casebook, 'model' | 'changeSeq' | 'snapshotSeq' | 'rest'>;

/** The snapshot beside the database and what has changed since; null where it is of no use. */
async function fromSnapshot(db: Db, empty: CasebookModel, lazily: boolean): Promise<Counted | null> {
  await breath();
  const read = await readSnapshot(db, empty, { lazily });
  if (read === null) return null;
  try {
    const counted = { ...read, snapshotSeq: read.changeSeq };
    await followChanges(db, counted);
    // The file holds what is counted; what came back later stands beside it.
    for (const record of await findCases(db, await listCameBack(db))) noteCameBack(counted.model, record);
    // Cases that were stored past the feed would be missed: then everything is read.
    if (counted.model.entries.size === (await countCases(db, 'accepted'))) return counted;
    getLogger().warn('The snapshot of the casebook does not hold every accepted case; the casebook is read from the database.');
  } catch (error) {
    read.rest?.close();
    if (!isSnapshotFault(error)) throw error;
    getLogger().warn({ err: error }, 'The snapshot of the casebook cannot be used; the casebook is read from the database.');
  }
  read.rest?.close();
  return null;
}

/** What a snapshot gives that was written for this; null where none could be. */
async function renewed(db: Db, empty: CasebookModel, renewAside: (() => Promise<boolean>) | undefined): Promise<Counted | null> {
  if (renewAside === undefined || (await countCases(db, 'accepted')) < LEAST_CASES || !(await renewAside())) return null;
  return fromSnapshot(db, empty, true);
}

/** Every accepted case; what is stored meanwhile is taken up once more from the feed, which changes nothing. */
async function fromDatabase(db: Db, model: CasebookModel): Promise<Counted> {
  const changeSeq = await findNewestChange(db);
  for await (const record of streamCases(db, 'accepted')) addCase(model, record);
  return { model, changeSeq, snapshotSeq: null, rest: null };
}
