import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { applyMigrations, projectPaths } from '../../prisma/migrations';

const names = readdirSync(projectPaths.migrations, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort();

function scratch(): string {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-upgrade-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** The first `count` migrations, as an earlier version of the program had them. */
function earlier(count: number): string {
  const folder = join(scratch(), 'migrations');
  mkdirSync(folder);
  for (const name of names.slice(0, count)) cpSync(join(projectPaths.migrations, name), join(folder, name), { recursive: true });
  return folder;
}

type Column = { name: string; type: string };
type Row = Record<string, unknown>;

const tablesOf = (database: Database.Database) =>
  database
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_prisma%' ESCAPE '\\'")
    .pluck()
    .all() as string[];

/** One row in every table. Every text is the same and every number is 1, so that every reference finds its row. */
function fill(database: Database.Database): void {
  database.pragma('foreign_keys = OFF');
  for (const table of tablesOf(database)) {
    const columns = database.pragma(`table_info("${table}")`) as Column[];
    // The first entry of the log follows none.
    const values = columns.map(({ name, type }) =>
      name === 'prevHash' ? '0'.repeat(64) : type === 'TEXT' ? 'x' : type === 'DATETIME' ? '2026-01-02T03:04:05.000Z' : 1,
    );
    const cells = columns.map(({ name }) => `"${name}"`).join(', ');
    database.prepare(`INSERT OR IGNORE INTO "${table}" (${cells}) VALUES (${columns.map(() => '?').join(', ')})`).run(...values);
  }
}

const rowsOf = (database: Database.Database) =>
  Object.fromEntries(tablesOf(database).map((table) => [table, database.prepare(`SELECT * FROM "${table}"`).all() as Row[]]));

describe('applyMigrations', () => {
  it.each(names.slice(0, -1).map((name, index) => ({ name, count: index + 1 })))(
    'brings a database with something in every table from $name to this version, and keeps all of it',
    async ({ count }) => {
      const file = join(scratch(), 'x.db');
      const migrations = earlier(count);
      await applyMigrations(`file:${file}`, { ...projectPaths, migrations });
      const old = new Database(file);
      fill(old);
      expect(old.pragma('foreign_key_check')).toEqual([]);
      const before = rowsOf(old);
      old.close();
      expect(Object.keys(before).length).toBeGreaterThan(20);

      expect(await applyMigrations(`file:${file}`)).toEqual(names.slice(count));
      const upgraded = new Database(file);
      expect(upgraded.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
      expect(upgraded.pragma('foreign_key_check')).toEqual([]);
      const after = rowsOf(upgraded);
      for (const [table, rows] of Object.entries(before)) expect(after[table], table).toMatchObject(rows);
      upgraded.close();
    },
  );
});
