import { Command, Option } from 'commander';
import type { EngineName } from '../../../shared/schemas/search';
import { countCases } from '../../repositories/case-repository';
import { type CommandIo, CommandError } from '../io';

/** Cases between two lines of progress. */
const TOLD_EVERY = 1_000;

type Options = { engine?: EngineName };

/** `reindex`: makes the search indexes anew; searches go on with the old ones until the new ones are complete. */
export function reindexCommand(io: CommandIo): Command {
  return new Command('reindex')
    .description('make the search index anew from the accepted cases; searches go on meanwhile')
    .addOption(new Option('--engine <name>', 'only this one').choices(['sqlite', 'meilisearch']))
    .action(async ({ engine }: Options) => {
      const search = io.search();
      const total = await countCases(io.db(), 'accepted');
      if (engine !== undefined && !search.engines.includes(engine)) {
        throw new CommandError('No search server is set up here: set MEILISEARCH_URL and MEILISEARCH_API_KEY first.');
      }
      for (const name of engine === undefined ? search.engines : [engine]) {
        const started = io.now().getTime();
        const seconds = () => ((io.now().getTime() - started) / 1000).toFixed(1);
        await search.reindex(name, (done) => {
          if (done % TOLD_EVERY === 0 && done > 0) io.err(`${name}: ${done} of ${total} cases, ${seconds()} s\n`);
        });
        io.out(`The ${name} index holds ${total} cases; it took ${seconds()} s.\n`);
      }
    });
}
