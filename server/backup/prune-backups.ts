import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { MANIFEST_NAME } from './backup-manifest';

const NAME = /^second-bench-\d{8}T\d{6}Z$/;

/** Name of the backup of a moment, such as `second-bench-20261125T030000Z`: later ones sort later. */
export function backupName(now: Date): string {
  return `second-bench-${now.toISOString().replace(/[-:]|\.\d+/g, '')}`;
}

/** Removes the oldest finished backups in a folder until `keep` are left, and returns the names of those removed. */
export async function pruneBackups(parent: string, keep: number): Promise<string[]> {
  const finished: string[] = [];
  for (const name of (await readdir(parent)).filter((entry) => NAME.test(entry)).sort()) {
    if (await stat(join(parent, name, MANIFEST_NAME)).catch(() => null)) finished.push(name);
  }
  const old = finished.slice(0, Math.max(0, finished.length - keep));
  for (const name of old) await rm(join(parent, name), { recursive: true });
  return old;
}
