import { readFile } from 'node:fs/promises';
import { parse } from 'csv-parse/sync';
import { CommandError } from './io';

export type CsvTable = { columns: string[]; rows: Record<string, string>[] };

/** Reads a CSV table with a header. Refuses one that cannot be opened, is empty or has rows of another length. */
export async function readTable(path: string): Promise<CsvTable> {
  const text = await readFile(path, 'utf8').catch(() => {
    throw new CommandError(`The file ${path} cannot be read.`);
  });
  try {
    const [columns, ...records] = parse(text, { bom: true, skip_empty_lines: true, trim: true }) as string[][];
    if (!columns || records.length === 0) throw new CommandError(`The file ${path} has no rows below its header.`);
    return { columns, rows: records.map((record) => Object.fromEntries(columns.map((name, i) => [name, record[i] ?? '']))) };
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(`The file ${path} is not a CSV table: ${error instanceof Error ? error.message : String(error)}`);
  }
}
