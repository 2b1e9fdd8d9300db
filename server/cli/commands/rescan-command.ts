import { Command } from 'commander';
import { knownWordsOf } from '../../../shared/domain/anonymise/known-words';
import { AppError } from '../../../shared/errors';
import { findCatalogue } from '../../repositories/catalogue-repository';
import { loadVocabulary } from '../../repositories/load-vocabulary';
import { rescanCases } from '../../services/rescan-cases';
import { type CommandIo, printJson } from '../io';

/** `rescan`: looks through the stored cases for personal details, and marks what it finds for the moderators. */
export function rescanCommand(io: CommandIo): Command {
  return new Command('rescan')
    .description('look for personal details in stored cases, and mark what is found for the moderators')
    .option('--json', 'print one JSON document')
    .addHelpText('after', '\nNothing is changed but the marks. Run again, it adds only what is new.')
    .action(async ({ json }: { json?: boolean }) => {
      const db = io.db();
      const catalogue = await findCatalogue(db);
      if (catalogue === null) throw new AppError('casebook-empty');
      const known = knownWordsOf(await loadVocabulary(db), catalogue);
      const onProgress = (done: number) => {
        if (done % 1000 === 0) io.err(`${done} cases\n`);
      };
      const found = await rescanCases(db, { known, onProgress });
      if (json) return printJson(io, found);
      io.out(
        `${found.cases} cases looked through: ${found.marks} marks in ${found.marked.length} of them, ${found.added} of the marks new.\n`,
      );
      for (const { id, status, marks } of found.marked) io.out(`${id} (${status}): ${marks}\n`);
    });
}
