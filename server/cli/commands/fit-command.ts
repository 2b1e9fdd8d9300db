import { Command } from 'commander';
import { fitAndStore } from '../../casebook/fit-and-store';
import { type CommandIo, printJson } from '../io';
import { cell } from '../text-table';

/** `fit`: fits the settings of the model to the accepted cases and puts them in use. */
export function fitCommand(io: CommandIo): Command {
  return new Command('fit')
    .description('fit the settings of the model to the accepted cases, and put them in use')
    .option('--json', 'print one JSON document')
    .action(async ({ json }: { json?: boolean }) => {
      io.err('Fitting; this takes up to a minute.\n');
      const { hash, records, changed, largestShift } = await fitAndStore(io.db(), io.now(), io);
      if (json) printJson(io, { hash, records, changed, largestShift });
      else {
        io.out(`Settings ${hash}, fitted on ${records} accepted cases${changed ? '' : '; the same as before'}.\n`);
        io.out(`Largest shift of a probability on these cases: ${cell(largestShift)}.\n`);
      }
    });
}
