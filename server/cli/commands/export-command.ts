import { stringify } from 'csv-stringify/sync';
import { Command, Option } from 'commander';
import { CASE_STATUSES, type CaseRecord, type CaseStatus } from '../../../shared/schemas/case';
import { streamCases } from '../../repositories/case-repository';
import { CSV_COLUMNS, csvCells } from '../case-files/csv-cells';
import { writePackage } from '../../open-data/write-package';
import { CommandError, type CommandIo } from '../io';

type Options = { format: 'jsonl' | 'csv'; status: CaseStatus | 'any'; package?: string };

/** `export`: every accepted case on standard output, one after another; or the whole casebook as a data package. */
export function exportCommand(io: CommandIo): Command {
  return new Command('export')
    .description('write cases to standard output, in a form that "import" reads')
    .addOption(new Option('--format <format>', 'jsonl: one JSON record per line; csv').choices(['jsonl', 'csv']).default('jsonl'))
    .addOption(new Option('--status <status>', 'which cases').choices([...CASE_STATUSES, 'any']).default('accepted'))
    .option('--package <folder>', 'write the accepted casebook as a data package into a new or empty folder instead')
    .action(async ({ format, status, package: folder }: Options) => {
      if (folder !== undefined) {
        if (await writePackage(io.db(), folder)) io.err(`Wrote the data package to ${folder}.\n`);
        else throw new CommandError(`${folder} holds something already. Name a new or an empty folder.`);
        return;
      }
      const write: (record: CaseRecord) => string = format === 'csv' ? csvLine : (record) => `${JSON.stringify(record)}\n`;
      if (format === 'csv') io.out(stringify([[...CSV_COLUMNS]]));
      for await (const record of streamCases(io.db(), status === 'any' ? undefined : status)) io.out(write(record));
    });
}

function csvLine(record: CaseRecord): string {
  const cells = csvCells(record);
  return stringify([CSV_COLUMNS.map((column) => cells[column])]);
}
