import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { MigrationList } from '@prisma/schema-engine-wasm/schema_engine_bg';
import { copyBeforeChange, unapplied } from './migration-state';
import { readableFault, withSchemaEngine } from './schema-engine';

/** Where the data model and its history live. */
export interface MigrationPaths {
  /** The Prisma schema file. */
  schema: string;
  /** The folder of `<timestamp>_<name>/migration.sql`. */
  migrations: string;
}

/** The project's own schema and migrations. */
export const projectPaths: MigrationPaths = {
  schema: fileURLToPath(new URL('./schema.prisma', import.meta.url)),
  migrations: fileURLToPath(new URL('./migrations', import.meta.url)),
};

const everything = { externalTables: [], externalEnums: [] };
const lockfileName = 'migration_lock.toml';
const lockfileText = '# Kept by Prisma: the database kind these migrations are written for.\nprovider = "sqlite"\n';

async function readOrNull(path: string): Promise<string | null> {
  return readFile(path, 'utf8').catch(() => null);
}

/** Reads the migrations folder, oldest first, in the shape that the schema engine takes. A missing folder is empty. */
async function readMigrations(folder: string): Promise<MigrationList> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const migrationDirectories = await Promise.all(
    names.sort().map(async (path) => {
      const sql = await readOrNull(join(folder, path, 'migration.sql'));
      const content = sql === null ? ({ tag: 'error', value: 'no migration.sql' } as const) : ({ tag: 'ok', value: sql } as const);
      return { path, migrationFile: { path: 'migration.sql', content } };
    }),
  );
  const lockfile = { path: lockfileName, content: (await readOrNull(join(folder, lockfileName))) ?? lockfileText };
  return { baseDir: folder, lockfile, shadowDbInitScript: '', migrationDirectories };
}

/**
 * Applies every migration that the database has not seen, in order, and records them in Prisma's own
 * `_prisma_migrations` table. A database that already holds something is copied beside itself first.
 *
 * @param url `file:` address of the SQLite database; created when missing.
 * @returns the names applied now; empty when the database was up to date.
 * @throws when a migration fails (the message names it and the copy), or when the file is somebody else's.
 */
export async function applyMigrations(url: string, paths: MigrationPaths = projectPaths): Promise<string[]> {
  const migrationsList = await readMigrations(paths.migrations);
  const names = migrationsList.migrationDirectories.map((directory) => directory.path);
  const waiting = unapplied(url, names);
  if (waiting.length === 0) return [];
  const copy = copyBeforeChange(url, waiting.at(-1) ?? '');
  return withSchemaEngine(url, async (engine) => {
    try {
      const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters: everything });
      return appliedMigrationNames;
    } catch (cause) {
      const kept = copy === null ? '' : ` The database as it was before is kept at ${copy}.`;
      throw new Error(`Migrating failed at one of ${waiting.join(', ')}: ${readableFault(cause)}${kept}`, { cause });
    }
  });
}

/**
 * The SQL that leads from the migrations as written to the schema as written.
 *
 * @returns the script, or null when the migrations already produce the schema (no drift).
 * @throws when the schema does not parse; the message names the line.
 */
export async function pendingChange(paths: MigrationPaths = projectPaths): Promise<string | null> {
  const migrations = await readMigrations(paths.migrations);
  const files = [{ path: paths.schema, content: await readFile(paths.schema, 'utf8') }];
  return withSchemaEngine(':memory:', async (engine) => {
    const { exitCode, stdout } = await engine.diff({
      from: { tag: 'migrations', ...migrations },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      filters: everything,
    });
    return exitCode === 0 ? null : stdout;
  });
}

/**
 * Writes the pending change as a new migration, `<timestamp>_<name>/migration.sql`. It applies nothing.
 *
 * @param options.name what the change does, in kebab-case or words; becomes part of the folder's name.
 * @param options.now the moment that the folder's name carries (UTC).
 * @returns the new folder's name, or null when there is nothing to write.
 */
export async function writeMigration(
  { name, now }: { name: string; now: Date },
  paths: MigrationPaths = projectPaths,
): Promise<string | null> {
  const slug = name.toLowerCase().replace(/[^a-z0-9]+/g, '_').replace(/^_+|_+$/g, '');
  if (slug === '') throw new Error('A migration needs a name: npm run migrate:new -- add-case-month');
  const sql = await pendingChange(paths);
  if (sql === null) return null;
  const stamp = now.toISOString().replace(/\D/g, '').slice(0, 14);
  const folder = `${stamp}_${slug}`;
  await mkdir(join(paths.migrations, folder), { recursive: true });
  await writeFile(join(paths.migrations, folder, 'migration.sql'), sql, { flag: 'wx' });
  await writeFile(join(paths.migrations, lockfileName), lockfileText);
  return folder;
}
