import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { bulkInsert } from '../../server/repositories/bulk-insert';
import { openSqlite } from '../../server/sqlite';
import { testDatabase } from '../setup/test-database';

const maker = (slug: string) => ({ data: { slug, name: `Maker ${slug}` } });

describe('createDb', () => {
  it('opens the file with write-ahead logging, foreign keys enforced and a busy timeout', async () => {
    const { db } = testDatabase();
    expect(await db.$queryRawUnsafe('PRAGMA journal_mode')).toEqual([{ journal_mode: 'wal' }]);
    expect(await db.$queryRawUnsafe('PRAGMA foreign_keys')).toEqual([{ foreign_keys: 1n }]);
    expect(await db.$queryRawUnsafe('PRAGMA busy_timeout')).toEqual([{ timeout: 5000n }]);
  });

  it('refuses a row that refers to nothing', async () => {
    const { db } = testDatabase();
    const orphan = { slug: 'm', position: 0, name: 'M', category: 'console', summary: 's', makerSlug: 'nobody' };
    await expect(db.deviceModel.create({ data: orphan })).rejects.toThrow(/[Ff]oreign key/);
  });

  it('prepares a statement once, whatever its values, and anew where the schema has changed', async () => {
    const { db, url } = testDatabase();
    const prepare = vi.spyOn(Database.prototype, 'prepare');
    onTestFinished(() => prepare.mockRestore());
    for (const slug of ['a', 'b', 'c']) await db.maker.create(maker(slug));
    const names = () => db.$queryRaw`SELECT "name" FROM "Maker" WHERE "slug" > ${'a'} ORDER BY "slug"`;
    for (let time = 0; time < 3; time += 1) expect(await names()).toEqual([{ name: 'Maker b' }, { name: 'Maker c' }]);
    const prepared = prepare.mock.calls.map(([sql]) => sql).filter((sql) => sql.includes('Maker'));
    expect(prepared.length).toBeGreaterThan(1);
    expect(new Set(prepared).size).toBe(prepared.length);
    const other = openSqlite(url);
    other.exec('UPDATE "Maker" SET "name" = \'X\'; ALTER TABLE "Maker" ADD COLUMN "more" TEXT');
    other.close();
    expect(await names()).toEqual([{ name: 'X' }, { name: 'X' }]);
  });

  it('takes more statements than are kept, and one that is longer than those', async () => {
    const { db } = testDatabase();
    const numbers = Array.from({ length: 450 }, (_, n) => n);
    for (let time = 0; time < 2; time += 1) {
      for (const n of numbers) expect(await db.$queryRawUnsafe(`SELECT CAST(? AS TEXT) AS "n${n}"`, 'x')).toEqual([{ [`n${n}`]: 'x' }]);
    }
    await bulkInsert(db, 'Maker', numbers.map((n) => ({ slug: `m${n}`, name: 'M'.repeat(20) })));
    expect(await db.maker.count()).toBe(450);
  });

  it('rolls back everything that a failed transaction wrote', async () => {
    const { db } = testDatabase();
    const failing = db.$transaction(async (tx) => {
      await tx.maker.create(maker('a'));
      throw new Error('changed my mind');
    });
    await expect(failing).rejects.toThrow('changed my mind');
    expect(await db.maker.count()).toBe(0);
  });

  it('keeps a write from outside a transaction out of that transaction', async () => {
    const { db } = testDatabase();
    let outside: Promise<unknown> = Promise.resolve();
    const failing = db.$transaction(async (tx) => {
      await tx.maker.create(maker('inside'));
      outside = db.maker.create(maker('outside')).then();
      await new Promise((resolve) => setTimeout(resolve, 50));
      throw new Error('changed my mind');
    });
    await expect(failing).rejects.toThrow('changed my mind');
    await outside;
    expect((await db.maker.findMany()).map((row) => row.slug)).toEqual(['outside']);
  });

  it('runs transactions that start together one after another', async () => {
    const { db } = testDatabase();
    await db.maker.create(maker('0'));
    const increments = Array.from({ length: 8 }, () =>
      db.$transaction(async (tx) => {
        const row = await tx.maker.findFirstOrThrow();
        await new Promise((resolve) => setTimeout(resolve, 2));
        await tx.maker.update({ where: { slug: row.slug }, data: { slug: String(Number(row.slug) + 1) } });
      }),
    );
    await Promise.all(increments);
    expect((await db.maker.findFirstOrThrow()).slug).toBe('8');
  });

  it('takes the write lock when a transaction starts, so that another program cannot write in between', async () => {
    const { db, url } = testDatabase();
    const other = openSqlite(url);
    onTestFinished(() => {
      other.close();
    });
    other.pragma('busy_timeout = 0');
    await db.$transaction(async (tx) => {
      await tx.maker.count();
      expect(() => other.exec("insert into Maker values ('x', 'X')")).toThrow('locked');
    });
    other.exec("insert into Maker values ('x', 'X')");
    expect(await db.maker.count()).toBe(1);
  });
});

describe('openSqlite', () => {
  it('sets the same pragmas as the client', () => {
    const { url } = testDatabase();
    const database = openSqlite(url);
    expect(['journal_mode', 'foreign_keys', 'busy_timeout'].map((name) => database.pragma(name, { simple: true }))).toEqual(['wal', 1, 5000]);
    database.close();
  });

  it('makes no new file when the name is wrong', () => {
    expect(() => openSqlite('file:/nowhere/at/all.db')).toThrow();
  });
});
