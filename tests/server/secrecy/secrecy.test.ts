import { randomBytes } from 'node:crypto';
import { TRPCError } from '@trpc/server';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { z } from 'zod';
import type { PrismaClient } from '../../../prisma/generated/client';
import { forgetLimits } from '../../../server/accounts/limits';
import { makeResetToken } from '../../../server/accounts/reset-link';
import { randomCaseId } from '../../../server/ids';
import { changeStatus } from '../../../server/repositories/submission-history';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import { appRouter } from '../../../server/trpc/root';
import { runCli } from '../cli/run-cli';
import { smallCases } from '../fixtures/small-cases';
import { makePhoto } from '../photos/make-photo';
import { fullForm, posting } from '../submission/posting';
import { takeConsoleErrors } from '../../setup/take-console-errors';
import { sampleInputs } from './sample-input';

/** Something that stands nowhere else. */
const marker = (name: string) => `${name}${randomBytes(9).toString('hex').replace(/\d/g, (d) => 'ghijklmnop'[Number(d)] ?? 'g')}`;

/**
 * A world in which one contributor has everything that an account can have: a published case and one that waits, both with
 * a photo, a draft, reports about how a repair held, a session and a link for a new password.
 */
async function fullWorld() {
  const owner = marker('owner');
  const world = await posting(smallCases(12));
  const { db, as } = world;
  const caller = await as(owner);
  const secrets = { owner, session: marker('session'), draft: marker('draft'), password: marker('password') };
  const at = new Date();
  await db.user.update({ where: { id: owner }, data: { name: marker('name') } });
  const { name } = await db.user.findUniqueOrThrow({ where: { id: owner } });
  await db.session.create({ data: { id: marker('sid'), token: secrets.session, userId: owner, expiresAt: at, createdAt: at, updatedAt: at } });
  const credential = { id: marker('cid'), userId: owner, accountId: owner, providerId: 'credential', password: secrets.password };
  await db.credential.create({ data: { ...credential, createdAt: at, updatedAt: at } });
  await makeResetToken(db, owner, at);
  const post = async (narrative: string) => {
    const draftId = randomCaseId();
    await caller.submission.saveDraft({ id: draftId, isNew: true, document: fullForm() });
    const photo = await caller.photo.add({ draftId, bytes: await makePhoto('jpeg', { width: 64, height: 32 }) });
    const photos = photo.kind === 'added' ? [{ id: photo.id, alt: 'The crystal' }] : [];
    const outcome = await caller.submission.submit({ draftId, document: fullForm({ narrative, photos, proof: 'suspected', provedBy: '' }) });
    if (outcome.kind !== 'submitted') throw new Error(JSON.stringify(outcome));
    return { caseId: outcome.id, key: outcome.key ?? '', photoId: photos[0]?.id ?? '' };
  };
  const published = await post('The first unit.');
  const waiting = await post('The second unit.');
  await changeStatus(db, published.caseId, { event: 'accept', from: 'submitted', to: 'accepted', month: '2025-04', reason: null });
  await caller.afterReport.send({ caseId: published.caseId, kind: 'held', months: 3 });
  await db.afterReport.updateMany({ data: { status: 'accepted' } });
  await caller.afterReport.send({ caseId: published.caseId, kind: 'came-back', months: 4 });
  const draftId = randomCaseId();
  await caller.submission.saveDraft({ id: draftId, isNew: true, document: fullForm({ ownWords: secrets.draft }) });
  const report = await db.afterReport.findFirstOrThrow({ where: { status: 'waiting' } });
  return { ...world, caller, published, waiting, draftId, reportId: report.id, secrets: { ...secrets, name } };
}

type World = Awaited<ReturnType<typeof fullWorld>>;
type Walked = { _def: { type: 'query' | 'mutation' | 'subscription'; inputs: z.ZodType[] } };
const procedures = Object.entries(appRouter._def.procedures) as unknown as [string, Walked][];

/** Everything somebody could know and try: ids of all that there is, words, months. */
const poolOf = ({ published, waiting, draftId, reportId, secrets }: World): string[] => [
  published.caseId,
  waiting.caseId,
  published.photoId,
  waiting.photoId,
  draftId,
  reportId,
  secrets.owner,
  secrets.name,
  'quellbrook-8-rev-a',
  'quellbrook-8',
  'grey-screen',
  'replace-crystal',
  'grey screen, clock present',
  '2025-03',
  'a'.repeat(20),
  '',
];

const inputsOf = ({ _def }: Walked, pool: readonly string[]): unknown[] => {
  const [first, ...more] = _def.inputs;
  if (first === undefined) return [undefined];
  const whole = more.reduce<z.ZodType>((all, next) => all.and(next), first);
  const samples = sampleInputs(whole, pool);
  return samples.length > 0 ? samples : [{}];
};

/** What a procedure tells: its answer, or what it says in refusing. */
async function told(caller: unknown, path: string, input: unknown): Promise<string> {
  const [area = '', name = ''] = path.split('.');
  const call = (caller as Record<string, Record<string, (input: unknown) => Promise<unknown>>>)[area]?.[name];
  try {
    return JSON.stringify((await call?.(input)) ?? null);
  } catch (error) {
    if (!(error instanceof TRPCError)) return String(error);
    return JSON.stringify([error.code, error.message, String(error.cause)]);
  }
}

const revealed = (text: string, secrets: Record<string, string>) =>
  Object.entries(secrets).flatMap(([what, secret]) => (text.toLowerCase().includes(secret.toLowerCase()) ? [what] : []));

let written: string[] = [];
beforeEach(() => {
  written = [];
  for (const stream of [process.stdout, process.stderr]) {
    vi.spyOn(stream, 'write').mockImplementation((chunk) => {
      written.push(String(chunk));
      return true;
    });
  }
});
afterEach(() => {
  vi.restoreAllMocks();
});

describe('what a contributor has', () => {
  it('is told by no procedure to a visitor or to another contributor, and stands in no line that is logged', async () => {
    const world = await fullWorld();
    const { secrets, visitor, as } = world;
    const pool = poolOf(world);
    const leaks: string[] = [];
    const called = new Set<string>();
    const reached = new Set<string>();
    // What only asks comes first: what changes something may take away what is asked for.
    const inOrder = [...procedures].sort(([, a], [, b]) => b._def.type.localeCompare(a._def.type));
    for (const who of [visitor, await as('another')]) {
      for (const [path, procedure] of inOrder) {
        for (const input of inputsOf(procedure, pool)) {
          forgetLimits();
          forgetSubmitLimits();
          const text = await told(who, path, input);
          // Somebody's own words in a refusal are no news to them.
          const given = revealed(JSON.stringify(input) ?? '', secrets);
          leaks.push(...revealed(text, secrets).filter((what) => !given.includes(what)).map((what) => `${path} tells ${what}`));
          called.add(path);
          if (!text.startsWith('["BAD_REQUEST"')) reached.add(path);
        }
      }
    }
    expect([...new Set(leaks)]).toEqual([]);
    expect(revealed(written.join('\n'), secrets)).toEqual([]);
    expect(revealed(takeConsoleErrors().join('\n'), secrets)).toEqual([]);
    // Nothing of this is worth much if the walk stops at the door.
    expect(called.size).toBe(procedures.length);
    expect(reached.size).toBeGreaterThan(procedures.length * 0.85);
    for (const path of ['casebook.getCase', 'photo.ofCase', 'afterReport.ofCase', 'lookup.ask']) expect(reached).toContain(path);
  }, 120_000);

  it('is in no export and no answer of the command line but the list of accounts', async () => {
    const { db, secrets, published } = await fullWorld();
    const { name, ...others } = secrets;
    for (const args of [
      ['export', '--status', 'any'],
      ['export', '--status', 'any', '--format', 'csv'],
      ['lookup', 'grey screen, clock present', '--json'],
      ['rescan', '--json'],
    ]) {
      const { code, out, err } = await runCli(db, args);
      expect(code, err).toBe(0);
      expect(revealed(out + err, secrets), args.join(' ')).toEqual([]);
      if (args[0] === 'export') expect(out).toContain(published.caseId);
    }
    const list = await runCli(db, ['user', 'list']);
    expect(list.out).toContain(name);
    expect(revealed(list.out, others)).toEqual([]);
  });
});

describe('cutting the link', () => {
  it('leaves no way from the contributor to the case through any table, and takes one that was there', async () => {
    const { db, caller, secrets, published, waiting } = await fullWorld();
    expect(await isJoined(db, secrets.owner, published.caseId)).toBe(true);
    expect(await isJoined(db, secrets.owner, waiting.caseId)).toBe(true);
    await changeStatus(db, waiting.caseId, { event: 'request-changes', from: 'submitted', to: 'changes-requested', month: '2025-04', reason: 'x' });
    await caller.submission.startChanges({ id: waiting.caseId });
    await caller.submission.cutLink({ id: published.caseId });
    expect(await isJoined(db, secrets.owner, published.caseId)).toBe(false);
    expect(await isJoined(db, secrets.owner, waiting.caseId)).toBe(true);
    await caller.submission.cutLink({ id: waiting.caseId });
    expect(await isJoined(db, secrets.owner, waiting.caseId)).toBe(false);
    const download = JSON.stringify(await caller.account.download());
    for (const { caseId, photoId } of [published, waiting]) for (const id of [caseId, photoId]) expect(download).not.toContain(id);
  });
});

type Row = Record<string, unknown>;

async function allRows(db: PrismaClient): Promise<{ table: string; rows: Row[] }[]> {
  const tables = await db.$queryRaw<{ name: string }[]>`SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name`;
  const found = [];
  for (const { name } of tables) {
    // Full-text tables keep their words in blocks of their own kind; as text they are searched, too.
    found.push({ table: name, rows: await db.$queryRawUnsafe<Row[]>(`SELECT * FROM "${name}"`) });
  }
  return found;
}

const asText = (row: Row) =>
  Object.values(row)
    .map((value) => (value instanceof Uint8Array ? Buffer.from(value).toString('latin1') : String(value)))
    .join(' ');

/** Values that stand for one thing only: ids, hashes, secrets. Words of the vocabulary, months and numbers do not. */
const DISTINCT = /\b(?:owner[a-p]{18}|[a-z2-7]{16}|[0-9a-f]{32}|[0-9a-f]{64}|[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})\b/g;

/** Whether rows that share such values lead from one to the other, over however many tables. */
async function isJoined(db: PrismaClient, from: string, to: string): Promise<boolean> {
  const rows = (await allRows(db)).flatMap(({ table, rows }) =>
    table === '_prisma_migrations' ? [] : rows.map((row) => new Set(asText(row).match(DISTINCT) ?? [])),
  );
  const known = new Set([from]);
  for (let before = 0; before < known.size; ) {
    before = known.size;
    for (const row of rows) if ([...row].some((value) => known.has(value))) for (const value of row) known.add(value);
  }
  return known.has(to);
}
