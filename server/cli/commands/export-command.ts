import { stringify } from 'csv-stringify/sync';
import { Command, Option } from 'commander';
import { CASE_STATUSES, type CaseRecord, type CaseStatus } from '../../../shared/schemas/case';
import { streamCases } from '../../repositories/case-repository';
import { CSV_COLUMNS, csvCells } from '../case-files/csv-cells';
import type { CommandIo } from '../io';

type Options = { format: 'jsonl' | 'csv'; status: CaseStatus | 'any' };

/** `export`: every accepted case on standard output, one after another. */
export function exportCommand(io: CommandIo): Command {
  return new Command('export')
    .description('write cases to standard output, in a form that "import" reads')
    .addOption(new Option('--format <format>', 'jsonl: one JSON record per line; csv').choices(['jsonl', 'csv']).default('jsonl'))
    .addOption(new Option('--status <status>', 'which cases').choices([...CASE_STATUSES, 'any']).default('accepted'))
    .action(async ({ format, status }: Options) => {
      const write: (record: CaseRecord) => string = format === 'csv' ? csvLine : (record) => `${JSON.stringify(record)}\n`;
      if (format === 'csv') io.out(stringify([[...CSV_COLUMNS]]));
      for await (const record of streamCases(io.db(), status === 'any' ? undefined : status)) io.out(write(record));
    });
}

function csvLine(record: CaseRecord): string {
  const cells = csvCells(record);
  return stringify([CSV_COLUMNS.map((column) => cells[column])]);
}
