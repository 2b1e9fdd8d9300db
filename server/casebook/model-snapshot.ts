import { existsSync } from 'node:fs';
import { assembleModel, type CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { createNamePool } from '../../shared/domain/casebook/name-pool';
import { countsFromSections, countsSections } from '../../shared/stats/counts-sections';
import { indexFromSections, indexSections } from '../../shared/stats/index-sections';
import { contentHash } from '../content-hash';
import type { Db } from '../db';
import { findChange } from '../repositories/case-change-repository';
import { findDatabaseFile } from '../repositories/database-file';
import { getLogger } from '../watching/logger';
import { openSections, type SectionFile, writeSections } from './section-file';
import { DamagedFileError } from './section-pieces';

/** Raised with every change of what is counted or of how it is kept. */
const VERSION = 7;

/** Fewer cases than this are read from the database in no time. */
export const LEAST_CASES = 1_000;

/** What a snapshot says of itself. */
type About = {
  version: number;
  /** Names vocabulary and catalogue: the numbers in the arrays mean something only with these. */
  wordsHash: string;
  /** Newest change of the feed that is counted, and the case that it was about: another database has another there. */
  changeSeq: number;
  changedCase: string | null;
  designators: string[];
};

/** Where the snapshot of a database stands: beside it. Null for a database in memory. */
export async function snapshotFile(db: Db): Promise<string | null> {
  const file = await findDatabaseFile(db);
  return file === null ? null : `${file}.casebook`;
}

/**
 * Writes what is counted beside the database, so that the next start reads it instead of every case. Copies the arrays
 * before it waits for anything, so that the model may go on changing. Returns the file's path, or null where there is no place for it.
 */
export async function writeSnapshot(db: Db, { model, changeSeq }: { model: CasebookModel; changeSeq: number }): Promise<string | null> {
  const sections = { ...countsSections(model.counts), ...indexSections(model.index) };
  const designators = [...model.designators.names];
  const file = await snapshotFile(db);
  if (file === null) return null;
  const changedCase = (await findChange(db, changeSeq))?.caseId ?? null;
  const about: About = { version: VERSION, wordsHash: wordsHash(model), changeSeq, changedCase, designators };
  await writeSections(file, about, sections);
  return file;
}

/** What a snapshot gave: `rest` is what still comes from the file when it is needed, null where everything is there. */
export type ReadSnapshot = { model: CasebookModel; changeSeq: number; rest: Pick<SectionFile<unknown>, 'completeSlowly' | 'close'> | null };

/**
 * The model of the snapshot beside the database, and the change up to which it counts. Null, with a line in the log, where
 * the snapshot is damaged or belongs to another vocabulary or database; null where there is none.
 * @param empty a model of no records, whose words and settings the new one takes over
 * @param lazily whether lists, words and counts may be read when they are needed: damage then shows only there
 */
export async function readSnapshot(db: Db, empty: CasebookModel, { lazily }: { lazily: boolean }): Promise<ReadSnapshot | null> {
  const file = await snapshotFile(db);
  if (file === null || !existsSync(file)) return null;
  let read: SectionFile<About> | null = null;
  try {
    const hash = wordsHash(empty);
    read = openSections<About>(file, ({ version, wordsHash: of }) => version === VERSION && of === hash);
    if (read === null) {
      getLogger().info('The snapshot of the casebook belongs to another vocabulary or version; the casebook is read from the database.');
      return null;
    }
    const { changeSeq, changedCase, designators } = read.about;
    if (((await findChange(db, changeSeq))?.caseId ?? null) !== changedCase) {
      read.close();
      getLogger().info('The snapshot of the casebook belongs to another state of the database; the casebook is read from the database.');
      return null;
    }
    if (!lazily) read.complete();
    const { layout } = empty.coding;
    const counts = countsFromSections(layout, read.sections);
    const index = indexFromSections(layout, read.sections);
    return { model: assembleModel({ ...empty, counts, index, designators: createNamePool(designators) }), changeSeq, rest: lazily ? read : null };
  } catch (error) {
    read?.close();
    if (!(error instanceof RangeError || isSnapshotFault(error))) throw error;
    getLogger().warn({ err: error }, 'The snapshot of the casebook cannot be used; the casebook is read from the database.');
    return null;
  }
}

/** Whether an error comes from the file: that it is damaged, or that it cannot be read. */
export function isSnapshotFault(error: unknown): boolean {
  return error instanceof DamagedFileError || isFileError(error);
}

function isFileError(error: unknown): boolean {
  return error instanceof Error && 'syscall' in error;
}

function wordsHash({ coding }: CasebookModel): string {
  return contentHash({ vocabulary: coding.vocabulary, catalogue: coding.catalogue });
}
