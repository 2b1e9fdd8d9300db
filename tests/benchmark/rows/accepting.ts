import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { contentHash } from '../../../server/content-hash';
import { createDb, type Db } from '../../../server/db';
import { insertCases } from '../../../server/repositories/insert-cases';
import { enterQueue } from '../../../server/repositories/waiting-cases';
import { acceptCase } from '../../../server/services/review/accept-case';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { CaseRecord } from '../../../shared/schemas/case';
import { type Row, timesOf, timesText } from '../run/measure';
import { fillDatabase, recordsOf } from '../world/database';

/** Accepting with all that belongs to it, beside the bare inserts of one case in one transaction; both wait for the disk. */
export async function acceptRow(folder: string, rounds: number): Promise<Row> {
  const file = join(folder, 'benchmark-accept.db');
  await fillDatabase(file, 500, () => {});
  const db = createDb(`file:${file}`);
  const waiting = [...recordsOf(9, 2 * rounds, 'submitted')];
  await db.$transaction((tx) => insertCases(tx, waiting, { newId: () => '' }), { timeout: 120_000 });
  await db.$transaction((tx) => enterQueue(tx, waiting.map(({ id }) => id), new Date()));
  const { model } = await loadCasebook(db);
  const at = new Date();
  // The log names who accepted by a key of their account.
  await db.user.create({ data: { id: ACTOR.id, name: ACTOR.id, username: ACTOR.id, email: 'a@bench.invalid', createdAt: at, updatedAt: at } });
  const asSet = await timesOfAccepting(db, model, waiting.slice(rounds));
  await db.$executeRaw`PRAGMA synchronous = FULL`;
  const own = await timesOfAccepting(db, model, waiting.slice(0, rounds));
  await db.$disconnect();
  const theirs = bareInserts(join(folder, 'benchmark-bare.db'), waiting.slice(0, rounds));
  for (const end of ['', '-wal', '-shm', '.casebook']) rmSync(`${file}${end}`, { force: true });
  const rate = (times: number[]) => 1000 / (times.reduce((sum, ms) => sum + ms, 0) / times.length);
  const share = rate(own) / rate(theirs);
  return {
    id: 'accept',
    work: `accepting a case, all that belongs to it (status, history, revision, queue, feed, log), synchronous FULL (${rate(asSet).toFixed(0)}/s with the program's own NORMAL)`,
    alternative: 'the bare inserts with better-sqlite3, synchronous FULL',
    asked: 'at least 1/15 of the rate',
    ours: `${rate(own).toFixed(0)}/s, ${timesText(timesOf(own))}`,
    theirs: `${rate(theirs).toFixed(0)}/s, ${timesText(timesOf(theirs))}`,
    ratio: share,
    ratioText: `1/${(1 / share).toFixed(1)} of the rate`,
    met: share >= 1 / 15,
  };
}

const ACTOR = { id: 'a-moderator', role: 'moderator' as const };

/** Milliseconds for each case, by the service that the moderators' page calls. */
async function timesOfAccepting(db: Db, model: CasebookModel, waiting: readonly CaseRecord[]): Promise<number[]> {
  const times: number[] = [];
  for (const { id, content } of waiting) {
    const seen = contentHash(content);
    const start = performance.now();
    const outcome = await acceptCase(db, model, { actor: ACTOR, id, seen, now: new Date() });
    times.push(performance.now() - start);
    if (outcome.status !== 'done') throw new Error(`A generated case was not accepted: ${JSON.stringify(outcome)}`);
  }
  return times;
}

function bareInserts(file: string, records: readonly CaseRecord[]): number[] {
  for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  const db = new Database(file);
  db.exec(`
    PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
    CREATE TABLE file (id TEXT PRIMARY KEY, device TEXT, month TEXT, narrative TEXT, proof TEXT, outcome TEXT);
    CREATE TABLE symptom (id TEXT, position INTEGER, slug TEXT, present INTEGER, PRIMARY KEY (id, position));
    CREATE TABLE step (id TEXT, position INTEGER, kind TEXT, slug TEXT, result TEXT, PRIMARY KEY (id, position));
    CREATE TABLE cause (id TEXT, position INTEGER, slug TEXT, PRIMARY KEY (id, position));
  `);
  const into = {
    file: db.prepare('INSERT INTO file VALUES (?, ?, ?, ?, ?, ?)'),
    symptom: db.prepare('INSERT INTO symptom VALUES (?, ?, ?, ?)'),
    step: db.prepare('INSERT INTO step VALUES (?, ?, ?, ?, ?)'),
    cause: db.prepare('INSERT INTO cause VALUES (?, ?, ?)'),
  };
  const insert = db.transaction(({ id, content: c }: CaseRecord) => {
    into.file.run(id, c.device, c.month, c.narrative, c.proof, c.outcome);
    c.symptoms.forEach((s, i) => into.symptom.run(id, i, s.symptom, s.present ? 1 : 0));
    c.steps.forEach((s, i) => into.step.run(id, i, s.kind, s.kind === 'check' ? s.check : s.fixes[0]?.fix, s.kind === 'check' ? s.outcome : s.result));
    c.causes.forEach(({ cause }, i) => into.cause.run(id, i, cause));
  });
  const times = records.map((record) => {
    const start = performance.now();
    insert(record);
    return performance.now() - start;
  });
  db.close();
  for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  return times;
}
