import Database from 'better-sqlite3';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { followChanges } from '../../../server/casebook/follow-changes';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { contentHash } from '../../../server/content-hash';
import { createDb } from '../../../server/db';
import { photoFolderOf } from '../../../server/photos/photo-files';
import { findCases } from '../../../server/repositories/case-repository';
import { listPhotoIds } from '../../../server/repositories/photo-repository';
import { listWordEdits } from '../../../server/repositories/word-edit-repository';
import { readDocumentSource } from '../../../server/search/document-source';
import { catchUpIndex, rebuildIndex } from '../../../server/search/index-upkeep';
import { createSqliteEngine } from '../../../server/search/sqlite-fts';
import { verifyLog } from '../../../server/services/log/verify-log';
import { sweepPhotos } from '../../../server/services/photo-tidy';
import { streamLog } from '../../../server/repositories/log-repository';
import { isWaiting } from '../../../shared/domain/review/is-waiting';
import { PHOTO_SIZES } from '../../../shared/schemas/photo';
import { searchQuerySchema } from '../../../shared/schemas/search';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';
import type { Account, Told } from './kill-rounds';

/**
 * Everything that is wrong with a database after a kill; empty where nothing was lost and nothing is half done. What was under
 * way may have happened or not, and is taken as it is from then on.
 */
export async function faultsAfterKill(databaseFile: string, account: Account): Promise<string[]> {
  const faults = fileFaults(databaseFile);
  const db = createDb(`file:${databaseFile}`);
  try {
    faults.push(...(await caseFaults(db, account)), ...(await statusFaults(db)));
    const log = await verifyLog(streamLog(db));
    if (!log.intact) faults.push(`The log breaks at ${log.seq}: ${log.fault}`);
    const decided = await db.caseStatusChange.count({ where: { event: { in: [...DECISIONS] } } });
    const logged = await db.logEntry.count({ where: { subjectKind: 'case' } });
    if (decided !== logged) faults.push(`${decided} decisions stand in the cases' history and ${logged} in the log.`);
    faults.push(...(await wordFaults(db, account)), ...(await photoFaults(db, databaseFile, account)));
  } finally {
    await db.$disconnect();
  }
  return faults;
}

const DECISIONS = ['accept', 'decline', 'request-changes', 'merge', 'retract', 'restore', 'correct'];

function fileFaults(databaseFile: string): string[] {
  const database = new Database(databaseFile);
  const integrity = database.pragma('integrity_check') as { integrity_check: string }[];
  const orphans = database.pragma('foreign_key_check') as { table: string }[];
  database.close();
  return [
    ...integrity.filter((row) => row.integrity_check !== 'ok').map((row) => row.integrity_check),
    ...orphans.map((row) => `A row of ${row.table} hangs in the air.`),
  ];
}

/** Compares what was told with what there is, for the keys that are meant; what was under way is taken as it is from then on. */
function compare(account: Account, isMeant: (key: string) => boolean, found: (key: string) => Told): string[] {
  const faults: string[] = [];
  for (const [key, told] of account.told) {
    if (!isMeant(key)) continue;
    const now = found(key);
    const same = now?.status === told?.status && now?.content === told?.content;
    if (!same && !account.underWay.has(key)) faults.push(`${key} was ${JSON.stringify(told)} and is ${JSON.stringify(now)}.`);
    account.told.set(key, now);
  }
  return faults;
}

const isCase = (key: string) => !key.includes(':') && key !== 'index';

async function caseFaults(db: ReturnType<typeof createDb>, account: Account): Promise<string[]> {
  const ids = [...account.told.keys()].filter(isCase);
  const stored = new Map<string, Awaited<ReturnType<typeof findCases>>[number]>();
  // One statement takes at most 999 values.
  for (let start = 0; start < ids.length; start += 500) {
    for (const record of await findCases(db, ids.slice(start, start + 500))) stored.set(record.id, record);
  }
  return compare(account, isCase, (id) => {
    const record = stored.get(id);
    return record ? { status: record.status, content: contentHash(record.content) } : null;
  });
}

/** Synonyms that are not as they were said to be, and changes of the vocabulary without their entry in the log. */
async function wordFaults(db: ReturnType<typeof createDb>, account: Account): Promise<string[]> {
  const edits = await listWordEdits(db);
  const status = new Map(
    edits.flatMap(({ edit, undone }) =>
      edit.act === 'synonyms' ? edit.add.map((text) => [`synonym:${text}`, undone ? 'undone' : 'in force']) : [],
    ) as [string, string][],
  );
  const faults = compare(
    account,
    (key) => key.startsWith('synonym:'),
    (key) => {
      const now = status.get(key);
      return now === undefined ? null : { status: now, content: '' };
    },
  );
  const logged = await db.logEntry.count({ where: { subjectKind: 'word' } });
  const changes = edits.length + edits.filter(({ undone }) => undone).length;
  return changes === logged
    ? faults
    : [...faults, `${changes} changes of the vocabulary were made, and ${logged} stand in the log.`];
}

/** Photos that are not as they were said to be, that lack a file, and files that the clean-up of a start leaves behind. */
async function photoFaults(db: ReturnType<typeof createDb>, databaseFile: string, account: Account): Promise<string[]> {
  const ids = new Set(await listPhotoIds(db));
  const faults = compare(
    account,
    (key) => key.startsWith('photo:'),
    (key) => ({ status: ids.has(key.slice('photo:'.length)) ? 'kept' : 'gone', content: '' }),
  );
  const photoFolder = photoFolderOf(databaseFile);
  await sweepPhotos({ db, photoFolder });
  const there = new Set(ids.size === 0 ? [] : readdirSync(photoFolder));
  for (const id of ids) {
    for (const size of Object.keys(PHOTO_SIZES)) {
      const name = `${id}-${size}.webp`;
      if (!there.delete(name)) faults.push(`Photo ${id} lacks its ${size} file.`);
      else if (!isWholeWebp(readFileSync(join(photoFolder, name)))) faults.push(`The ${size} file of photo ${id} is cut short.`);
    }
  }
  return [...faults, ...[...there].map((name) => `${name} belongs to no photo and was not swept.`)];
}

/** A RIFF file says how long it is: the bytes after its first eight (WebP container specification, RIFF file format). */
const isWholeWebp = (bytes: Buffer) =>
  bytes.toString('latin1', 0, 4) === 'RIFF' &&
  bytes.toString('latin1', 8, 12) === 'WEBP' &&
  bytes.readUInt32LE(4) === bytes.length - 8;

/** A status without its history, or a waiting case without its place in the queue. */
async function statusFaults(db: ReturnType<typeof createDb>): Promise<string[]> {
  const files = await db.caseFile.findMany({
    where: { history: { some: {} } },
    select: { id: true, status: true, history: { orderBy: { position: 'desc' }, take: 1, select: { toStatus: true } } },
  });
  const waiting = new Set((await db.waitingCase.findMany({ select: { caseId: true } })).map((row) => row.caseId));
  return files.flatMap(({ id, status, history }) => [
    ...(history[0]?.toStatus === status ? [] : [`Case ${id} is ${status}, and its history ends otherwise.`]),
    ...(isWaiting(status as 'submitted') === waiting.has(id)
      ? []
      : [`Case ${id} is ${status} and ${waiting.has(id) ? '' : 'not '}in the queue.`]),
  ]);
}

/** Whether statistics that followed the feed all the while equal those of a new load. */
export async function statisticsFaults(
  databaseFile: string,
  followed: Awaited<ReturnType<typeof loadCasebook>>,
): Promise<string[]> {
  const db = createDb(`file:${databaseFile}`);
  try {
    await followChanges(db, followed);
    const anew = await loadCasebook(db);
    const same = JSON.stringify(serialiseCounts(followed.model.counts)) === JSON.stringify(serialiseCounts(anew.model.counts));
    return same ? [] : ['The statistics that followed the feed differ from a new load.'];
  } finally {
    await db.$disconnect();
  }
}

const QUESTIONS = ['', 'grey', 'cured unit', 'crystal', 'came again', 'more'];

/** Whether the search index that the killed programs left, once it has caught up, equals one made anew. */
export async function searchFaults(databaseFile: string, scratch: string): Promise<string[]> {
  const db = createDb(`file:${databaseFile}`);
  const followed = createSqliteEngine(`${databaseFile}-search`);
  const anew = createSqliteEngine(scratch);
  try {
    const source = await readDocumentSource(db);
    await catchUpIndex({ db, engine: followed, source });
    await rebuildIndex({ db, engine: anew, source });
    const faults: string[] = [];
    for (const text of QUESTIONS) {
      const query = searchQuerySchema.parse({ text, take: 50 });
      const [left, right] = [await followed.search(query), await anew.search(query)];
      const parts = (Object.keys(right) as (keyof typeof right)[]).filter(
        (part) => JSON.stringify(left[part]) !== JSON.stringify(right[part]),
      );
      if (parts.length > 0)
        faults.push(
          `The index answers "${text}" otherwise than one made anew: ${parts.join(', ')}. ${JSON.stringify(left[parts[0]!])} ${JSON.stringify(right[parts[0]!])}`,
        );
    }
    const [left, right] = [rowsOfIndex(`${databaseFile}-search`), rowsOfIndex(scratch)];
    if (left !== right) faults.push('The index holds other rows than one made anew.');
    return faults;
  } finally {
    await followed.close();
    await anew.close();
    await db.$disconnect();
  }
}

/** Everything that an index holds, in an order that does not depend on how it came in. */
function rowsOfIndex(path: string): string {
  const file = new Database(path, { readonly: true });
  try {
    const integrity = file.pragma('integrity_check', { simple: true });
    const cases = file
      .prepare('SELECT d.*, 0 AS doc, t.* FROM case_doc d JOIN case_text t ON t.rowid = d.doc ORDER BY d.id')
      .all();
    const tags = file.prepare('SELECT d.id, t.name, t.value FROM case_tag t JOIN case_doc d USING (doc) ORDER BY 1, 2, 3').all();
    const words = file.prepare('SELECT word, cases FROM word WHERE cases > 0 ORDER BY word').all();
    return JSON.stringify({ integrity, cases, tags, words });
  } finally {
    file.close();
  }
}
