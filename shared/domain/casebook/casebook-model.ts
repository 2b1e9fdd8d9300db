import type { CaseRecord } from '../../schemas/case';
import type { DeviceCatalogue } from '../../schemas/device';
import type { ReadQuery } from '../../schemas/finding';
import type { Vocabulary } from '../../schemas/vocabulary';
import { addRecord, type Counts, createCounts, retractRecord } from '../../stats/counts';
import type { AdditiveEstimator } from '../../stats/estimator';
import { createRecordIndex, liveRows, type RecordIndex, retractFromIndex } from '../../stats/record-index';
import { rowOfKey } from '../../stats/record-keys';
import { defaultSettings, type Settings } from '../../stats/settings';
import { createEstimator } from '../../stats/weighted-naive-bayes';
import { type Coding, createCoding } from '../coding/coding';
import { encodeCase } from '../coding/encode-case';
import { buildReader } from '../read-query/read-query';
import { allSteps, type Steps } from '../steps/steps';
import { NO_ALIASES, type WordAliases } from '../words/word-aliases';
import { withoutRetired } from '../words/word-lists';
import { type CameBack, curesThatCameBack } from './came-back';
import { addCaseRow, type CaseEntry, caseEntry, codedRecord } from './case-entry';
import { keyOfCase } from './case-key';
import { createNamePool, type NamePool } from './name-pool';
import { proofNow } from './proof-now';
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
  /** Designators by the numbers that the index knows them by. */
  readonly designators: NamePool;
  /** Cures that did not last, by the id of the case; the index counts them as the cures that they were. */
  readonly cameBack: Map<string, CameBack>;
  /** Accepted cases, each put together when it is asked for. */
  readonly entries: CaseEntries;
};

/** The accepted cases of a model. Walking through `values` allocates per case: count with the index where it must be fast. */
export type CaseEntries = {
  readonly size: number;
  /** The case in a row of the index, taken out or not; undefined where the row was never given out. */
  get(row: number): CaseEntry | undefined;
  values(): IterableIterator<CaseEntry>;
};

/** A model of no records. Without `settingsFor` it has the default settings, without `aliases` nothing was ever merged. */
export function createCasebookModel(
  vocabulary: Vocabulary,
  catalogue: DeviceCatalogue,
  settingsFor: (coding: Coding) => Settings = (coding) => defaultSettings(coding.layout),
  aliases: WordAliases = NO_ALIASES,
): CasebookModel {
  return allSteps(buildCasebookModel(vocabulary, catalogue, settingsFor, aliases));
}

/** The same in steps. */
export function* buildCasebookModel(
  vocabulary: Vocabulary,
  catalogue: DeviceCatalogue,
  settingsFor: (coding: Coding) => Settings,
  aliases: WordAliases,
): Steps<CasebookModel> {
  const coding = createCoding(vocabulary, catalogue);
  yield;
  const read = yield* buildReader(withoutRetired(vocabulary), catalogue);
  return assembleModel({
    coding,
    words: vocabularyWords(vocabulary, catalogue, aliases),
    read,
    settings: settingsFor(coding),
    counts: createCounts(coding.layout),
    index: createRecordIndex(coding.layout),
    designators: createNamePool(),
  });
}

/** A model of parts that belong together: what was counted and what was indexed must be the same records. */
export function assembleModel(parts: Omit<CasebookModel, 'estimator' | 'entries' | 'cameBack'>): CasebookModel {
  const { coding, counts, settings } = parts;
  const estimator = createEstimator(coding.layout, counts, settings);
  return { ...parts, estimator, cameBack: new Map(), entries: entriesOf(parts) };
}

function entriesOf(rows: Pick<CasebookModel, 'coding' | 'index' | 'designators'>): CaseEntries {
  return {
    get size() {
      return rows.index.size;
    },
    get: (row) => (row >= 0 && row < rows.index.rows ? caseEntry(rows, row) : undefined),
    *values() {
      for (const row of liveRows(rows.index)) yield caseEntry(rows, row);
    },
  };
}

/** Row of a case in the index; -1 where it is not in. */
export function rowOfCase(model: CasebookModel, id: string): number {
  const key = keyOfCase(id);
  return key === null ? -1 : rowOfKey(model.index.keys, key);
}

/**
 * Counts an accepted case, without refitting the settings. A case that is counted already changes nothing and
 * returns false. Throws CodingError, and counts nothing, where it names what the coding does not know.
 */
export function addCase(model: CasebookModel, record: CaseRecord): boolean {
  if (rowOfCase(model, record.id) >= 0) return false;
  const coded = encodeCase(model.coding, { ...record.content, proof: proofNow(record.content, record.afterwards) });
  addRecord(model.counts, coded);
  addCaseRow(model, record, coded);
  noteCameBack(model, record);
  return true;
}

/** Notes whether the cure of a case that is in came back. Only a model that was read from a file needs to be told. */
export function noteCameBack(model: CasebookModel, record: CaseRecord): void {
  const row = rowOfCase(model, record.id);
  const fixes = curesThatCameBack(model.coding, record);
  if (row >= 0 && fixes.length > 0) model.cameBack.set(record.id, { row, fixes });
}

/** Takes a case out again: the exact inverse of `addCase`. Returns false where it is not in. */
export function retractCase(model: CasebookModel, id: string): boolean {
  const row = rowOfCase(model, id);
  if (row < 0) return false;
  retractRecord(model.counts, codedRecord(model, row));
  retractFromIndex(model.index, row);
  model.cameBack.delete(id);
  return true;
}
