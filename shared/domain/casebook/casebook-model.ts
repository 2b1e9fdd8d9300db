import type { CaseRecord } from '../../schemas/case';
import type { DeviceCatalogue } from '../../schemas/device';
import type { ReadQuery } from '../../schemas/finding';
import type { Vocabulary } from '../../schemas/vocabulary';
import { addRecord, type Counts, createCounts, retractRecord } from '../../stats/counts';
import type { AdditiveEstimator } from '../../stats/estimator';
import { addToIndex, createRecordIndex, type RecordIndex, retractFromIndex } from '../../stats/record-index';
import { defaultSettings, type Settings } from '../../stats/settings';
import { createEstimator } from '../../stats/weighted-naive-bayes';
import { type Coding, createCoding } from '../coding/coding';
import { createReader } from '../read-query/read-query';
import { type CaseEntry, caseEntry } from './case-entry';
import { vocabularyWords, type VocabularyWords } from './vocabulary-words';

/** The accepted records as the statistics see them, and what it takes to ask and to answer in words. */
export type CasebookModel = {
  readonly coding: Coding;
  readonly words: VocabularyWords;
  /** Reads bench language into findings. */
  readonly read: (text: string) => ReadQuery;
  readonly settings: Settings;
  readonly counts: Counts;
  readonly index: RecordIndex;
  readonly estimator: AdditiveEstimator;
  /** Accepted cases by their row of the index. */
  readonly entries: Map<number, CaseEntry>;
  readonly rows: Map<string, number>;
};

/** A model of no records. `settings` null takes the defaults. */
export function createCasebookModel(
  vocabulary: Vocabulary,
  catalogue: DeviceCatalogue,
  settingsFor: (coding: Coding) => Settings = (coding) => defaultSettings(coding.layout),
): CasebookModel {
  const coding = createCoding(vocabulary, catalogue);
  const counts = createCounts(coding.layout);
  const settings = settingsFor(coding);
  return {
    coding,
    words: vocabularyWords(vocabulary, catalogue),
    read: createReader(vocabulary, catalogue),
    settings,
    counts,
    index: createRecordIndex(coding.layout),
    estimator: createEstimator(coding.layout, counts, settings),
    entries: new Map(),
    rows: new Map(),
  };
}

/**
 * Counts an accepted case, without refitting the settings. A case that is counted already changes nothing and
 * returns false. Throws CodingError, and counts nothing, where it names what the coding does not know.
 */
export function addCase(model: CasebookModel, record: CaseRecord): boolean {
  if (model.rows.has(record.id)) return false;
  const entry = caseEntry(model.coding, record);
  addRecord(model.counts, entry.coded);
  const row = addToIndex(model.index, entry.coded);
  model.entries.set(row, entry);
  model.rows.set(record.id, row);
  return true;
}

/** Takes a case out again: the exact inverse of `addCase`. Returns false where it is not in. */
export function retractCase(model: CasebookModel, id: string): boolean {
  const row = model.rows.get(id);
  const entry = row === undefined ? undefined : model.entries.get(row);
  if (row === undefined || entry === undefined) return false;
  retractRecord(model.counts, entry.coded);
  retractFromIndex(model.index, row);
  model.entries.delete(row);
  model.rows.delete(id);
  return true;
}
