import { existsSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { snapshotFile, writeSnapshot } from '../../../server/casebook/model-snapshot';
import type { PrismaClient } from '../../../prisma/generated/client';
import { randomCaseId } from '../../../server/ids';
import { importCases } from '../../../server/services/import-cases';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { retractCase } from '../../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import { questionSchema } from '../../../shared/schemas/question';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainContent } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';

const question = questionSchema.parse({ text: 'grey screen, clock present', device: 'quellbrook-8-rev-a' });

/** Everything that a model answers with, and everything that it counts. */
const told = (model: CasebookModel) => ({
  counts: serialiseCounts(model.counts),
  answer: lookUp(model, question),
  entries: [...model.entries.values()].sort((a, b) => (a.id < b.id ? -1 : 1)),
  tallies: [model.index.carrying, model.index.proofs, model.index.attempts, model.index.attemptsByCause].map((cells) => [...cells]),
});

async function withSnapshot(): Promise<{ db: PrismaClient; file: string; before: CasebookModel }> {
  const { db } = testDatabase();
  await fillDatabase(db, smallCases(90));
  const casebook = await loadCasebook(db);
  expect(casebook.snapshotSeq).toBeNull();
  const file = await writeSnapshot(db, casebook);
  return { db, file: file as string, before: casebook.model };
}

describe('the snapshot of the casebook', () => {
  it('gives back the same model, and stands beside the database', async () => {
    const { db, file, before } = await withSnapshot();
    expect(file).toBe(await snapshotFile(db));
    expect(readdirSync(dirname(file)).filter((name) => name.endsWith('.new'))).toEqual([]);
    const { model, snapshotSeq, changeSeq } = await loadCasebook(db);
    expect(snapshotSeq).toBe(changeSeq);
    expect(told(model)).toEqual(told(before));
  });

  it('is brought up to date with what was stored since, and the model can change as any other', async () => {
    const { db } = await withSnapshot();
    const cases = [{ id: null, content: plainContent() }];
    await importCases(db, { cases, accept: true, source: 'a file', actor: 'test', now: new Date(), newId: randomCaseId });
    const { model, snapshotSeq, changeSeq } = await loadCasebook(db);
    expect(changeSeq).toBe((snapshotSeq as number) + 1);
    expect(model.entries.size).toBe(91);
    const [first] = model.entries.values();
    retractCase(model, first?.id ?? '');
    expect(model.entries.size).toBe(90);
    expect(model.index.total[0]).toBe(90);
  });

  it.each([
    ['a byte in the middle is another', (file: string) => flip(file, (size) => Math.floor(size / 2))],
    ['a byte at the beginning is another', (file: string) => flip(file, () => 20)],
    ['it is cut short', (file: string) => truncateSync(file, Math.floor(readFileSync(file).length * 0.7))],
    ['it is empty', (file: string) => writeFileSync(file, '')],
    ['it is something else', (file: string) => writeFileSync(file, 'grey screen, clock present'.repeat(20))],
  ])('is left aside where %s', async (_, damage) => {
    const { db, file, before } = await withSnapshot();
    damage(file);
    const { model, snapshotSeq } = await loadCasebook(db);
    expect(snapshotSeq).toBeNull();
    expect(told(model)).toEqual(told(before));
  });

  it('answers the same while most of it is still in the file, and can change then', async () => {
    const { db, before } = await withSnapshot();
    const { model, rest } = await loadCasebook(db, { lazily: true });
    expect(model.index.filling.done).toBe(false);
    const id = [...before.entries.values()][7]?.id as string;
    expect(retractCase(model, id)).toBe(true);
    expect(retractCase(before, id)).toBe(true);
    expect(lookUp(model, question)).toEqual(lookUp(before, question));
    await rest?.completeSlowly();
    expect(model.index.filling.done).toBe(true);
    expect(told(model)).toEqual(told(before));
  });

  it('whose damage shows only later is left aside then, and every case is read', async () => {
    const { db, file, before } = await withSnapshot();
    // Within the last list, which the first answer does not need.
    flip(file, (size) => size - 12);
    const first = await getCasebook(db);
    expect(first.snapshotSeq).not.toBeNull();
    const loaded = await vi.waitUntil(async () => ((await getCasebook(db)) === first ? null : getCasebook(db)), { timeout: 20_000 });
    forgetCasebook();
    expect(loaded.snapshotSeq).toBeNull();
    expect(told(loaded.model)).toEqual(told(before));
  });

  it('of another database, or of other words, is left aside', async () => {
    const { file } = await withSnapshot();
    const other = testDatabase();
    await fillDatabase(other.db, smallCases(120).slice(30));
    const place = (await snapshotFile(other.db)) as string;
    writeFileSync(place, readFileSync(file));
    const loaded = await loadCasebook(other.db);
    expect(loaded.snapshotSeq).toBeNull();
    expect(loaded.model.entries.size).toBe(90);
    await writeSnapshot(other.db, loaded);
    await other.db.symptom.updateMany({ where: { slug: 'dead' }, data: { label: 'Quite dead' } });
    expect((await loadCasebook(other.db)).snapshotSeq).toBeNull();
  });

  it('that lacks an accepted case is left aside', async () => {
    const { db } = await withSnapshot();
    const [file] = await db.caseFile.findMany({ take: 1, select: { id: true } });
    await db.caseFile.update({ where: { id: file?.id ?? '' }, data: { status: 'retracted' } });
    const { model, snapshotSeq } = await loadCasebook(db);
    expect(snapshotSeq).toBeNull();
    expect(model.entries.size).toBe(89);
  });

  it('is not looked for where there is none', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(3));
    expect(existsSync((await snapshotFile(db)) as string)).toBe(false);
    expect((await loadCasebook(db)).snapshotSeq).toBeNull();
  });
});

function flip(file: string, at: (size: number) => number): void {
  const bytes = readFileSync(file);
  const place = at(bytes.length);
  bytes[place] = (bytes[place] as number) ^ 0x20;
  writeFileSync(file, bytes);
}
