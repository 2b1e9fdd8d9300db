import { addCase, type CasebookModel, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { settingsFromDocument } from '../../shared/domain/casebook/settings-document';
import { AppError } from '../../shared/errors';
import { defaultSettings, settingsHash } from '../../shared/stats/settings';
import type { Db } from '../db';
import { findNewestChange } from '../repositories/case-change-repository';
import { streamCases } from '../repositories/case-repository';
import { findCatalogue } from '../repositories/catalogue-repository';
import { findNewestReload, hasEvent } from '../repositories/event-log-repository';
import { loadVocabulary } from '../repositories/load-vocabulary';
import { findNewestSettings } from '../repositories/model-settings-repository';
import { countWorkingUnits } from '../repositories/working-unit-repository';

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
};

/**
 * Reads vocabulary, catalogue, fitted settings and every accepted case into memory. Throws `casebook-empty` where no
 * device is stored. 4,200 cases take about a second.
 */
export async function loadCasebook(db: Db): Promise<Casebook> {
  // Both are read first: what is stored meanwhile is then taken up once more, which changes nothing.
  const loadedFor = await findNewestReload(db);
  const changeSeq = await findNewestChange(db);
  const catalogue = await findCatalogue(db);
  if (catalogue === null) throw new AppError('casebook-empty');
  const vocabulary = await loadVocabulary(db);
  const stored = await findNewestSettings(db);
  let fittedAt: Date | null = null;
  const model = createCasebookModel(vocabulary, catalogue, (coding) => {
    const settings = stored && settingsFromDocument(coding, stored.document);
    if (settings) fittedAt = stored.fittedAt;
    return settings ?? defaultSettings(coding.layout);
  });
  for await (const record of streamCases(db, 'accepted')) addCase(model, record);
  return {
    model,
    settings: { hash: settingsHash(model.settings), fittedAt },
    workingUnits: await countWorkingUnits(db),
    demo: await hasEvent(db, 'seed'),
    loadedFor,
    changeSeq,
  };
}
