import { mkdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { Command } from 'commander';
import { backupName, pruneBackups } from '../../backup/prune-backups';
import { writeBackup } from '../../backup/write-backup';
import { getEnv } from '../../env';
import { photoFolderOf } from '../../photos/photo-files';
import { storageFaultOf } from '../../storage/storage-fault';
import { CommandError, type CommandIo, printJson } from '../io';
import { wholeNumber } from '../option-parsers';

/** The backups' disk is another one than the database's where things are as they should be. */
function backupWords(error: Error): string {
  const fault = storageFaultOf(error);
  if (fault === 'disk-full') return 'The disk that the backups stand on is full: make room, or keep fewer with --keep.';
  return fault === 'disk-read-only'
    ? 'The folder of the backups, or the database, cannot be opened or written by this user.'
    : error.message;
}

type Options = { into?: string; keep?: number; json?: boolean };

/** `backup`: copies the database and the photos while the site runs, and checks the copy. */
export function backupCommand(io: CommandIo): Command {
  return new Command('backup')
    .description('copy the database and the photos while the site runs, and check the copy')
    .option('--into <folder>', 'where the backups stand (default: backups, beside the database)')
    .option('--keep <count>', 'remove the oldest backups there until this many are left', wholeNumber(1, 10_000))
    .option('--json', 'print one JSON document')
    .action(async ({ into, keep, json }: Options) => {
      // Refuses where there is no database yet.
      io.db();
      const { databaseFile } = getEnv();
      const parent = resolve(into ?? join(dirname(databaseFile), 'backups'));
      const folder = join(parent, backupName(io.now()));
      const manifest = await mkdir(parent, { recursive: true, mode: 0o700 })
        .then(() => writeBackup({ databaseFile, photoFolder: photoFolderOf(databaseFile) }, folder, { now: io.now() }))
        .catch((error: Error) => {
          throw new CommandError(`No backup was made. ${backupWords(error)}`);
        });
      const removed = keep === undefined ? [] : await pruneBackups(parent, keep);
      if (json) return printJson(io, { folder, ...manifest, removed });
      const photos = manifest.files.length - 1;
      io.out(`Backed up ${manifest.cases} cases and ${photos} photo files to ${folder}, and read the copy back: it is sound.\n`);
      if (removed.length > 0) io.out(`Removed ${removed.length} older: ${removed.join(', ')}.\n`);
    });
}
