import type { DeviceCatalogue } from '../../schemas/device';
import type { Vocabulary } from '../../schemas/vocabulary';
import { type PackedCounts, packCounts, unpackCounts } from '../../stats/packed-counts';
import { sliceCounts } from '../../stats/slice-counts';
import { assembleModel, type CasebookModel } from '../casebook/casebook-model';
import { createNamePool, numberOfName } from '../casebook/name-pool';
import { settingsFromDocument, settingsToDocument } from '../casebook/settings-document';
import { type VocabularyWords, vocabularyWords } from '../casebook/vocabulary-words';
import { type Coding, createCoding } from '../coding/coding';
import { createReader } from '../read-query/read-query';
import { allSteps, type Steps } from '../steps/steps';
import { withoutRetired } from '../words/word-lists';
import { indexOf, type PackedRecords, packedRows, packRecords, unpackRecords } from './packed-records';

export const SNAPSHOT_VERSION = 1;

/** What a browser needs, besides the words, to answer for one device as the server would. Plain and serialisable. */
export type CasebookSnapshot = {
  version: number;
  /** Slug of the board or model that it answers for. */
  device: string;
  /** Fitted settings, in their own versioned form. */
  settings: string;
  counts: PackedCounts;
  records: PackedRecords;
  /** Parts at which a cause was found on this board, by position of the record: what splits a cause by designator. */
  parts: [number, { cause: string; designators: string[] }[]][];
};

/** Vocabulary and catalogue, shared by the snapshots of all devices. */
export type CasebookWords = { vocabulary: Vocabulary; catalogue: DeviceCatalogue };

/** Takes the snapshot of a model for one device. Throws RangeError where the device is not in the catalogue. */
export function takeSnapshot(model: CasebookModel, device: string): CasebookSnapshot {
  return allSteps(buildSnapshot(model, device));
}

/** The same in steps. The model must stay as it is until the last of them. */
export function* buildSnapshot(model: CasebookModel, device: string): Steps<CasebookSnapshot> {
  const node = model.coding.deviceOf(device);
  if (node === undefined) throw new RangeError(`There is no device "${device}" in the catalogue.`);
  const parts: CasebookSnapshot['parts'] = [];
  packedRows(model.index).forEach((row, position) => {
    if (model.index.device[row] !== node) return;
    const causes = model.entries.get(row)?.causes ?? [];
    if (causes.some((c) => c.designators.length > 0)) parts.push([position, causes]);
  });
  yield;
  const records = yield* packRecords(model);
  return {
    version: SNAPSHOT_VERSION,
    device,
    settings: settingsToDocument(model.coding, model.settings),
    counts: packCounts(sliceCounts(model.counts, node)),
    records,
    parts,
  };
}

/** Coding, words and reader of a vocabulary; the reader is made when first asked to read something. */
export type PreparedWords = { coding: Coding; words: VocabularyWords; read: CasebookModel['read'] };

/** Prepares words once for any number of snapshots. */
export function prepareWords({ vocabulary, catalogue }: CasebookWords): PreparedWords {
  let reader: CasebookModel['read'] | undefined;
  const read: CasebookModel['read'] = (text) => {
    if (text.trim() === '') return { findings: [], unread: [], ambiguous: [], device: null };
    reader ??= createReader(withoutRetired(vocabulary), catalogue);
    return reader(text);
  };
  return { coding: createCoding(vocabulary, catalogue), words: vocabularyWords(vocabulary, catalogue), read };
}

/**
 * The model that a snapshot stands for. It answers for the snapshot's device and the nodes above it; its cases have no
 * ids, months or texts. Throws where the snapshot has another version or was taken with other words.
 */
export function modelFromSnapshot(prepared: PreparedWords, snapshot: CasebookSnapshot): CasebookModel {
  const { coding } = prepared;
  if (snapshot.version !== SNAPSHOT_VERSION) throw new Error(`A snapshot of version ${snapshot.version} cannot be read.`);
  const settings = settingsFromDocument(coding, snapshot.settings);
  if (settings === null) throw new Error('The settings of this snapshot cannot be read.');
  const counts = unpackCounts(coding.layout, snapshot.counts);
  const records = unpackRecords(coding.layout, snapshot.records);
  const designators = createNamePool();
  const parts = new Map(
    snapshot.parts.map(([row, causes]) => {
      const numbers = new Map(causes.map((c) => [coding.causeOf(c.cause), c.designators.map((name) => numberOfName(designators, name))]));
      return [row, (records[row]?.causes ?? []).map((cause) => numbers.get(cause) ?? [])];
    }),
  );
  return assembleModel({ ...prepared, settings, counts, index: indexOf(coding.layout, records, parts), designators });
}
