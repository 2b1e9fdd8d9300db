import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type BackupManifest, backupManifestSchema, DATABASE_NAME, MANIFEST_NAME } from './backup-manifest';
import { fileDigest } from './file-digest';
import { inspectDatabase } from './inspect-database';

/**
 * Reads what a backup says of itself and holds every file against it, then opens the copy of the database and checks it.
 * Throws an Error in one sentence where anything is missing, changed or not sound.
 */
export async function verifyBackup(folder: string): Promise<BackupManifest> {
  const manifest = await readManifest(folder);
  for (const { path, bytes, sha256 } of manifest.files) {
    const found = await fileDigest(join(folder, path)).catch(() => null);
    if (found === null) throw new Error(`The backup lacks its file ${path}. Use another backup.`);
    if (found.bytes !== bytes || found.sha256 !== sha256)
      throw new Error(`The backup's file ${path} was changed or damaged. Use another backup.`);
  }
  const { faults, ...found } = inspectDatabase(join(folder, DATABASE_NAME));
  if (faults.length > 0) throw new Error(`The backup's database is not sound: ${faults.join(' ')} Use another backup.`);
  if (found.cases !== manifest.cases || found.log?.hash !== manifest.log?.hash) {
    throw new Error('The backup holds something else than it says. Use another backup.');
  }
  return manifest;
}

async function readManifest(folder: string): Promise<BackupManifest> {
  const text = await readFile(join(folder, MANIFEST_NAME), 'utf8').catch(() => null);
  if (text === null) throw new Error(`There is no backup in ${folder}: it has no ${MANIFEST_NAME}.`);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new Error(`The backup's ${MANIFEST_NAME} is not JSON. Use another backup.`);
  }
  const parsed = backupManifestSchema.safeParse(value);
  if (parsed.success) return parsed.data;
  const fault = parsed.error.issues[0];
  throw new Error(`The backup's ${MANIFEST_NAME} cannot be read: ${fault?.path.join('.')}: ${fault?.message}`);
}
