import { statSync } from 'node:fs';
import Database from 'better-sqlite3';

/** The file behind a `file:` address. */
function fileOf(url: string): string {
  return url.replace(/^file:/, '');
}

/** Bytes in the file; 0 when there is none. */
function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}

/**
 * Which of the migrations the database has not finished applying, in the given order. Reading Prisma's own table
 * directly spares every start of the program the half second that the schema engine takes to load.
 *
 * @param names every migration, oldest first.
 */
export function unapplied(url: string, names: string[]): string[] {
  if (sizeOf(fileOf(url)) === 0) return names;
  const database = new Database(fileOf(url), { readonly: true });
  try {
    const history = "select 1 from sqlite_master where type = 'table' and name = '_prisma_migrations'";
    if (database.prepare(history).get() === undefined) return names;
    const finished = database
      .prepare('select migration_name from _prisma_migrations where finished_at is not null and rolled_back_at is null')
      .pluck()
      .all();
    return names.filter((name) => !finished.includes(name));
  } finally {
    database.close();
  }
}

/**
 * Copies a database that is about to be changed, because SQLite cannot undo a migration that fails half-way.
 *
 * @param name the migration that it is about to be brought to; becomes part of the copy's name.
 * @returns the copy's path, or null when there was nothing to copy.
 */
export function copyBeforeChange(url: string, name: string): string | null {
  const file = fileOf(url);
  if (sizeOf(file) === 0) return null;
  const copy = `${file}.before-${name}`;
  if (sizeOf(copy) > 0) return copy;
  const database = new Database(file);
  try {
    database.prepare('vacuum into ?').run(copy);
  } finally {
    database.close();
  }
  return copy;
}
