import { appendFileSync, cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { applyMigrations, type MigrationPaths, pendingChange, projectPaths, writeMigration } from '../../prisma/migrations';

const now = new Date('2026-03-04T05:06:07Z');

function scratch(): { folder: string; url: string; paths: MigrationPaths } {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-migrations-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const paths = { schema: join(folder, 'schema.prisma'), migrations: join(folder, 'migrations') };
  return { folder, url: `file:${join(folder, 'test.db')}`, paths };
}

function copyOfProject() {
  const made = scratch();
  cpSync(projectPaths.schema, made.paths.schema);
  cpSync(projectPaths.migrations, made.paths.migrations, { recursive: true });
  return made;
}

function tablesIn(url: string): string[] {
  const database = new Database(url.slice('file:'.length), { readonly: true });
  const rows = database.prepare("select name from sqlite_master where type = 'table'").all() as { name: string }[];
  database.close();
  return rows.map((row) => row.name);
}

const oneTable = 'datasource db {\n  provider = "sqlite"\n}\nmodel Bench {\n  id String @id\n}\n';

describe('applyMigrations', () => {
  it('makes every table of the schema in an empty file, and keeps its history in the table that Prisma reads', async () => {
    const { url } = scratch();
    const applied = await applyMigrations(url);
    const models = [...readFileSync(projectPaths.schema, 'utf8').matchAll(/^model (\w+)/gm)].map((match) => match[1]);
    expect(applied.length).toBeGreaterThan(0);
    expect(models.length).toBeGreaterThan(0);
    expect(tablesIn(url)).toEqual(expect.arrayContaining([...models, '_prisma_migrations']));
  });

  it('does nothing the second time', async () => {
    const { url } = scratch();
    await applyMigrations(url);
    expect(await applyMigrations(url)).toEqual([]);
  });

  it('applies only what is new, and keeps the rows that were there', async () => {
    const { url, paths } = scratch();
    writeFileSync(paths.schema, oneTable);
    await writeMigration({ name: 'first', now }, paths);
    await applyMigrations(url, paths);
    const before = new Database(url.slice('file:'.length));
    before.exec("insert into Bench (id) values ('kept')");
    before.close();

    writeFileSync(paths.schema, oneTable.replace('@id\n', '@id\n  note String?\n'));
    await writeMigration({ name: 'second', now: new Date('2026-03-05T00:00:00Z') }, paths);
    expect(await applyMigrations(url, paths)).toEqual(['20260305000000_second']);
    const after = new Database(url.slice('file:'.length));
    expect(after.prepare('select id, note from Bench').all()).toEqual([{ id: 'kept', note: null }]);
    after.close();
  });

  it('names the migration that fails and keeps the database as it was before beside it', async () => {
    const { url, paths } = scratch();
    writeFileSync(paths.schema, oneTable);
    await writeMigration({ name: 'first', now }, paths);
    await applyMigrations(url, paths);
    writeFileSync(paths.schema, `${oneTable}model Added {\n  id String @id\n}\n`);
    const second = await writeMigration({ name: 'second', now: new Date('2026-03-05T00:00:00Z') }, paths);
    appendFileSync(join(paths.migrations, `${second}`, 'migration.sql'), 'insert into Nowhere values (1);');

    await expect(applyMigrations(url, paths)).rejects.toThrow(/at one of 20260305000000_second: .*Nowhere.* kept at/);
    expect(tablesIn(`${url}.before-20260305000000_second`).sort()).toEqual(['Bench', '_prisma_migrations']);
  });

  it('waits for a program that holds the file, then says that it is in use', { timeout: 30_000 }, async () => {
    const { url } = scratch();
    const other = new Database(url.slice('file:'.length));
    onTestFinished(() => {
      other.close();
    });
    other.exec('begin immediate');
    await expect(applyMigrations(url)).rejects.toThrow('in use by another program');
  });

  it('refuses a database that is not ours', async () => {
    const { url } = scratch();
    const foreign = new Database(url.slice('file:'.length));
    foreign.exec('create table t (a)');
    foreign.close();
    await expect(applyMigrations(url)).rejects.toThrow('not empty');
  });
});

describe('pendingChange', () => {
  it('is nothing for the project: the migrations produce the schema as written', async () => {
    expect(await pendingChange()).toBeNull();
  });

  it('is the new column after one was added to the schema', async () => {
    const { paths } = copyOfProject();
    appendFileSync(paths.schema, '\nmodel Added {\n  id String @id\n  weight Int\n}\n');
    expect(await pendingChange(paths)).toContain('CREATE TABLE "Added"');
  });

  it('says which line of the schema does not parse', async () => {
    const { paths } = scratch();
    writeFileSync(paths.schema, `${oneTable}model Broken {\n  id Strin @id\n}\n`);
    await expect(pendingChange(paths)).rejects.toThrow(/Strin/);
  });
});

describe('writeMigration', () => {
  it('writes the change into a folder named after moment and purpose, after which nothing is pending', async () => {
    const { paths } = copyOfProject();
    appendFileSync(paths.schema, '\nmodel Added {\n  id String @id\n}\n');
    const name = await writeMigration({ name: 'Add added', now }, paths);
    expect(name).toBe('20260304050607_add_added');
    expect(readFileSync(join(paths.migrations, `${name}`, 'migration.sql'), 'utf8')).toContain('CREATE TABLE "Added"');
    expect(await pendingChange(paths)).toBeNull();
  });

  it('writes nothing when nothing changed', async () => {
    const { paths } = copyOfProject();
    expect(await writeMigration({ name: 'idle', now }, paths)).toBeNull();
    expect(existsSync(join(paths.migrations, '20260304050607_idle'))).toBe(false);
  });

  it('asks for a name', async () => {
    const { paths } = copyOfProject();
    await expect(writeMigration({ name: ' - ', now }, paths)).rejects.toThrow('needs a name');
  });
});
