import { stringify } from 'csv-stringify/sync';
import { z } from 'zod';
import { CASE_SCHEMA, CASES_JSONL } from '../../shared/domain/open-data/package-descriptor';
import { PACKAGE_TABLES, type PackageTable } from '../../shared/domain/open-data/package-tables';
import { caseRecordSchema } from '../../shared/schemas/case';
import { guarded } from '../cli/case-files/csv-cells';
import type { Db } from '../db';
import { streamCases } from '../repositories/case-repository';
import { type Cell, TABLE_ROWS } from './table-rows';

/** A file of the package: its media type, and its text piece by piece. */
export type PackageFile = { mediaType: string; pieces: (db: Db) => AsyncIterable<string> };

/** Text is handed on when so many characters have come together. */
const PIECE = 65_536;
/** Rows that are written as CSV in one go: one by one takes twice as long. */
const LINES = 100;

/** Every file of the package but the descriptor, by its path. No file is ever held whole. */
export const PACKAGE_FILES: ReadonlyMap<string, PackageFile> = new Map([
  [CASES_JSONL, { mediaType: 'application/jsonl', pieces: (db) => joined(caseLines(db)) }],
  [CASE_SCHEMA, { mediaType: 'application/schema+json', pieces: schemaText }],
  ...PACKAGE_TABLES.map((table): [string, PackageFile] => [
    `${table.name}.csv`,
    { mediaType: 'text/csv', pieces: (db) => joined(csvLines(db, table)) },
  ]),
]);

async function* caseLines(db: Db): AsyncGenerator<string> {
  for await (const record of streamCases(db, 'accepted')) yield `${JSON.stringify(record)}\n`;
}

async function* schemaText(): AsyncGenerator<string> {
  yield `${JSON.stringify(z.toJSONSchema(caseRecordSchema, { target: 'draft-2020-12' }), null, 2)}\n`;
}

async function* csvLines(db: Db, { name, fields }: PackageTable): AsyncGenerator<string> {
  const rowsOf = TABLE_ROWS[name];
  if (!rowsOf) throw new Error(`The table "${name}" is described, but nothing makes its rows.`);
  const columns = fields.map((field) => field.name);
  let lines = [columns];
  for await (const row of rowsOf(db)) {
    lines.push(columns.map((column) => cellText(name, column, row[column])));
    if (lines.length < LINES) continue;
    yield stringify(lines);
    lines = [];
  }
  yield stringify(lines);
}

/** The text of a cell. Text that a spreadsheet would take for a formula is guarded; cases come guarded already. */
function cellText(table: string, column: string, cell: Cell | undefined): string {
  if (cell === undefined) throw new Error(`The table "${table}" has no "${column}" in a row.`);
  if (cell === null) return '';
  return typeof cell === 'string' && table !== 'cases' ? guarded(cell) : String(cell);
}

/** The same text in larger pieces. */
async function* joined(lines: AsyncIterable<string>): AsyncGenerator<string> {
  let piece = '';
  for await (const line of lines) {
    piece += line;
    if (piece.length < PIECE) continue;
    yield piece;
    piece = '';
  }
  if (piece !== '') yield piece;
}
