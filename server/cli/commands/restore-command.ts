import { resolve } from 'node:path';
import { Command } from 'commander';
import { applyMigrations } from '../../../prisma/migrations';
import { restoreBackup } from '../../backup/restore-backup';
import { createDb } from '../../db';
import { getEnv } from '../../env';
import { photoFolderOf } from '../../photos/photo-files';
import { replayCuts } from '../../services/log/replay-cuts';
import { CommandError, type CommandIo, printJson } from '../io';

type Options = { replace?: boolean; json?: boolean };

/** `restore`: verifies a backup, puts it in place, brings it to this version and repeats the cuts made since. */
export function restoreCommand(io: CommandIo): Command {
  return new Command('restore')
    .description('verify a backup and put it in the place of the database and the photos; stop the site first')
    .argument('<folder>', 'the folder that "backup" has made')
    .option('--replace', 'set a database that is there aside, instead of refusing')
    .option('--json', 'print one JSON document')
    .action(async (folder: string, { replace, json }: Options) => {
      const { databaseFile, databaseUrl } = getEnv();
      const target = { databaseFile, photoFolder: photoFolderOf(databaseFile) };
      const restored = await restoreBackup(resolve(folder), target, { now: io.now(), replace: replace ?? false }).catch(
        (error: Error) => {
          throw new CommandError(`Nothing was restored. ${error.message}`);
        },
      );
      const migrations = await applyMigrations(databaseUrl);
      const db = createDb(databaseUrl);
      try {
        const replayed = await replayCuts(db, restored.destroyed);
        const { manifest, setAside } = restored;
        if (json) return printJson(io, { writtenAt: manifest.writtenAt, cases: manifest.cases, setAside, migrations, replayed });
        io.out(`Restored ${manifest.cases} cases as they were at ${manifest.writtenAt}.\n`);
        if (migrations.length > 0) io.out(`Brought to this version by ${migrations.length} migrations.\n`);
        if (replayed.links + replayed.accounts > 0) {
          io.out(`Repeated since then: ${replayed.links} links cut, ${replayed.accounts} accounts deleted.\n`);
        }
        if (setAside !== null)
          io.out(`What was there before stands at ${setAside}. Remove it once all is well: it is as private as the database.\n`);
      } finally {
        await db.$disconnect();
      }
    });
}
