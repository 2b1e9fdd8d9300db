import { Command } from 'commander';
import { loadCasebook } from '../../casebook/load-casebook';
import { writeSnapshot } from '../../casebook/model-snapshot';
import { type CommandIo, printJson } from '../io';

/** `snapshot`: writes what is counted beside the database, for the next start to read. */
export function snapshotCommand(io: CommandIo): Command {
  return new Command('snapshot')
    .description('write the counted casebook to a file beside the database, so that the next start is quick')
    .option('--json', 'print one JSON document')
    .action(async ({ json }: { json?: boolean }) => {
      const casebook = await loadCasebook(io.db());
      const file = await writeSnapshot(io.db(), casebook);
      const cases = casebook.model.entries.size;
      if (json) printJson(io, { file, cases, changeSeq: casebook.changeSeq });
      else io.out(file === null ? 'A database in memory has no snapshot.\n' : `${cases} accepted cases in ${file}.\n`);
    });
}
