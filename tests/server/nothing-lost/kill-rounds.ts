import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { followChanges } from '../../../server/casebook/follow-changes';
import { contentHash } from '../../../server/content-hash';
import { createDb } from '../../../server/db';
import { findCases } from '../../../server/repositories/case-repository';
import { streamLog } from '../../../server/repositories/log-repository';
import { readDocumentSource } from '../../../server/search/document-source';
import { catchUpIndex, rebuildIndex } from '../../../server/search/index-upkeep';
import { createSqliteEngine } from '../../../server/search/sqlite-fts';
import { verifyLog } from '../../../server/services/log/verify-log';
import { isWaiting } from '../../../shared/domain/review/is-waiting';
import { searchQuerySchema } from '../../../shared/schemas/search';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';

const WORKER = fileURLToPath(new URL('./kill-worker.ts', import.meta.url));

/** What the worker said of a case: how it stood when last told, and whether something was under way. */
type Told = { status: string; content: string } | null;
type Account = { told: Map<string, Told>; underWay: Map<string, string>; done: number };

export type KillRound = { afterMs: number; done: number; underWay: number };

/**
 * Starts the worker on a database, kills it without warning after a while, and remembers what it had said.
 *
 * @param afterMs how long it works on before it is killed, in milliseconds.
 */
export async function killRound(
  databaseFile: string,
  account: Account,
  { seed, afterMs }: { seed: number; afterMs: number },
): Promise<KillRound> {
  const env = { ...process.env, DATABASE_URL: `file:${databaseFile}`, NODE_ENV: 'production' as const, LOG_LEVEL: 'error' };
  const child = spawn(process.execPath, ['--import', 'tsx', WORKER, databaseFile, String(seed)], {
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let trouble = '';
  child.stderr.on('data', (chunk) => {
    trouble += chunk;
  });
  const ended = once(child, 'close');
  const before = account.done;
  account.underWay.clear();
  for await (const line of createInterface({ input: child.stdout })) {
    const said = JSON.parse(line) as {
      about?: string;
      op?: string;
      done?: string;
      status?: string;
      content?: string;
    };
    if (said.about) {
      account.underWay.set(said.about, said.op ?? '');
      if (!account.told.has(said.about)) account.told.set(said.about, null);
    }
    if (said.done) {
      // Counted from the first thing done: loading the program takes most of a round.
      if (account.done === before) setTimeout(() => child.kill('SIGKILL'), afterMs);
      account.told.set(said.done, { status: said.status ?? '', content: said.content ?? '' });
      account.underWay.delete(said.done);
      account.done++;
    }
  }
  await ended;
  if (child.signalCode !== 'SIGKILL') throw new Error(`The worker ended by itself: ${trouble}`);
  return { afterMs, done: account.done - before, underWay: account.underWay.size };
}

export const newAccount = (): Account => ({ told: new Map(), underWay: new Map(), done: 0 });

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

async function caseFaults(db: ReturnType<typeof createDb>, account: Account): Promise<string[]> {
  const ids = [...account.told.keys()];
  const stored = new Map<string, Awaited<ReturnType<typeof findCases>>[number]>();
  // One statement takes at most 999 values.
  for (let start = 0; start < ids.length; start += 500) {
    for (const record of await findCases(db, ids.slice(start, start + 500))) stored.set(record.id, record);
  }
  const faults: string[] = [];
  for (const [id, told] of account.told) {
    const record = stored.get(id);
    const found = record ? { status: record.status as string, content: contentHash(record.content) } : null;
    const same = found?.status === told?.status && found?.content === told?.content;
    if (!same && !account.underWay.has(id))
      faults.push(`Case ${id} was ${JSON.stringify(told)} and is ${JSON.stringify(found)}.`);
    account.told.set(id, found);
  }
  return faults;
}

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
      if (JSON.stringify(left) !== JSON.stringify(right))
        faults.push(`The index answers "${text}" otherwise than one made anew.`);
    }
    return faults;
  } finally {
    await followed.close();
    await anew.close();
    await db.$disconnect();
  }
}
