import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { CsvError, parse } from 'csv-parse';
import type { VocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import { readCaseRow, type ReadRow } from './case-row';
import { CSV_COLUMNS, rowFromCells } from './csv-cells';

/** Reads a file of cases row by row: CSV where the name ends in .csv, else JSON Lines. Rejects where it cannot be opened. */
export function readCaseFile(words: VocabularyWords, path: string): AsyncGenerator<ReadRow> {
  return path.toLowerCase().endsWith('.csv') ? readCsv(words, path) : readJsonLines(words, path);
}

async function* readJsonLines(words: VocabularyWords, path: string): AsyncGenerator<ReadRow> {
  const input = createReadStream(path, 'utf8');
  let line = 0;
  for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    line += 1;
    const json = line === 1 ? text.replace(/^\uFEFF/u, '') : text;
    if (json.trim() === '') continue;
    yield readJsonLine(words, line, json);
  }
}

function readJsonLine(words: VocabularyWords, line: number, json: string): ReadRow {
  let row: unknown;
  try {
    row = JSON.parse(json);
  } catch (error) {
    const reason = `The line is not JSON: ${error instanceof Error ? error.message : String(error)}.`;
    return { line, problems: [{ field: '', reason }] };
  }
  return readCaseRow(words, line, row);
}

async function* readCsv(words: VocabularyWords, path: string): AsyncGenerator<ReadRow> {
  const parser = createReadStream(path).pipe(parse({ bom: true, info: true, relax_column_count: true, skip_empty_lines: true }));
  let header: string[] | null = null;
  let before = 0;
  try {
    for await (const { record, info } of parser as AsyncIterable<{ record: string[]; info: { lines: number } }>) {
      // `lines` counts up to the end of the row; a quoted cell may run over several lines.
      const line = Math.max(before + 1, 1);
      before = info.lines;
      if (header === null) {
        header = record.map((name) => name.trim());
        const problems = headerProblems(header);
        if (problems.length > 0) {
          yield { line, problems };
          return;
        }
      } else yield readCsvRow(words, line, { header, record });
    }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    yield { line: before + 1, problems: [{ field: '', reason: `The row is not CSV: ${error.message}.` }] };
  }
}

function headerProblems(header: readonly string[]) {
  const known = new Set<string>(CSV_COLUMNS);
  const strange = header.filter((name) => !known.has(name)).map((field) => ({ field, reason: 'There is no such column.' }));
  const optional = new Set<string>(['id', 'status']);
  const missing = CSV_COLUMNS.filter((name) => !optional.has(name) && !header.includes(name));
  return [...strange, ...missing.map((field) => ({ field, reason: 'This column is missing from the first line.' }))];
}

function readCsvRow(words: VocabularyWords, line: number, { header, record }: { header: string[]; record: string[] }): ReadRow {
  if (record.length !== header.length) {
    return { line, problems: [{ field: '', reason: `The row has ${record.length} cells, the first line ${header.length}.` }] };
  }
  const { row, problems } = rowFromCells(Object.fromEntries(header.map((name, i) => [name, record[i] ?? ''])));
  if (problems.length > 0) return { line, problems };
  return readCaseRow(words, line, row);
}
