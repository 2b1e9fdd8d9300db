import type Database from 'better-sqlite3';
import { assembleModel, type CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { createNamePool } from '../../../shared/domain/casebook/name-pool';
import { countsFromSections, countsSections } from '../../../shared/stats/counts-sections';
import { indexFromSections, indexSections } from '../../../shared/stats/index-sections';
import { matchingCounts } from '../../../shared/stats/matching-counts';
import { rankSimilar } from '../../../shared/stats/rank-similar';
import { openSections, type SectionFile, writeSections } from '../../../server/casebook/section-file';
import type { CodedFinding } from '../../../shared/stats/layout';
import { fasterRow, ms, quantile, type Row, timed, timesOf } from '../run/measure';
import { emptyModel } from '../world/model';

/** Writes the model's snapshot, as the program does. */
export function writeModel(file: string, { counts, index, designators }: CasebookModel): Promise<void> {
  return writeSections(file, { designators: designators.names }, { ...countsSections(counts), ...indexSections(index) });
}

/** Reads a snapshot as a server does, but for the questions to the database; `rest` is read behind the first answers. */
export function readModel(file: string, empty: CasebookModel): { model: CasebookModel; rest: SectionFile<unknown> } {
  const read = openSections<{ designators: string[] }>(file, () => true);
  if (read === null) throw new Error('The snapshot was not wanted.');
  const { layout } = empty.coding;
  const counts = countsFromSections(layout, read.sections);
  const index = indexFromSections(layout, read.sections);
  return { model: assembleModel({ ...empty, counts, index, designators: createNamePool(read.about.designators) }), rest: read };
}

/** The first answer: what matches, how likely the causes are, and what is most similar. */
function firstAnswer({ index, estimator }: CasebookModel, { device, findings }: { device: number; findings: CodedFinding[] }): number {
  estimator.probabilities(device, findings);
  rankSimilar(index, { device, findings }, { limit: 10 });
  return matchingCounts(index, findings).total;
}

/** A start from the snapshot until the first answer, beside reading the rows. */
export function startRow(file: string, db: Database.Database, rounds: number): Row {
  const empty = emptyModel();
  const own: number[] = [];
  const theirs: number[] = [];
  const rests: number[] = [];
  let size = 0;
  const boards = empty.coding.devices.flatMap((node, n) => (node.level === 'board' ? [n] : []));
  for (let round = 0; round < rounds; round += 1) {
    // Another question each time, as a start meets whatever is asked first.
    const findings = [0, 1, 2].map((i) => ({ observable: (round * 7 + i * 31) % 120, value: 1 }));
    let rest: SectionFile<unknown> | null = null;
    own.push(
      timed(() => {
        const read = readModel(file, empty);
        rest = read.rest;
        size = firstAnswer(read.model, { device: boards[round % boards.length] as number, findings });
      }),
    );
    rests.push(timed(() => (rest as SectionFile<unknown> | null)?.complete()));
    theirs.push(timed(() => readRows(db)));
  }
  const ratio = quantile(theirs, 0.5) / quantile(own, 0.5);
  const head = { id: 'start', work: `start from snapshot, ${size.toLocaleString('en')} cases, until the first answer`, alternative: 'reading the rows from SQLite' };
  const note = `posterior on a board, matching counts and similar cases; what it reads is checked; the rest, read behind the answers, takes ${ms(quantile(rests, 0.5))} more; files in the page cache on both sides`;
  return fasterRow(head, { ours: timesOf(own), theirs: timesOf(theirs), ratio }, { atLeast: 50, note });
}

function readRows(db: Database.Database): number {
  let sum = 0;
  for (const row of db.prepare('SELECT id, device, month, cause, proof FROM record').raw().iterate()) sum += (row as number[])[0] as number;
  for (const row of db.prepare('SELECT case_id, position, value FROM finding_of_case').raw().iterate()) sum += (row as number[])[2] as number;
  return sum;
}
