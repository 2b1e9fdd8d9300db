import { access } from 'node:fs/promises';
import { basename } from 'node:path';
import { Command } from 'commander';
import { vocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import { AppError } from '../../../shared/errors';
import { findCatalogue } from '../../repositories/catalogue-repository';
import { loadVocabulary } from '../../repositories/load-vocabulary';
import { importCases } from '../../services/import-cases';
import type { ReadRow } from '../case-files/case-row';
import { CSV_COLUMNS } from '../case-files/csv-cells';
import { LIST_SYNTAX_HELP } from '../case-files/list-syntax';
import { readCaseFile } from '../case-files/read-case-file';
import { CommandError, type CommandIo, printJson } from '../io';

type Options = { accept?: boolean; keepGood?: boolean; json?: boolean };
type Refused = { line: number; field: string; reason: string };
type GoodRow = Extract<ReadRow, { case: unknown }>;

const HELP = `
A file whose name ends in .csv is CSV, any other is JSON Lines: one case per line, as "export" writes it.
CSV columns (id and status may be missing, the order is free): ${CSV_COLUMNS.join(', ')}.
${LIST_SYNTAX_HELP}
Cases enter as submitted and wait for review. The same file twice adds nothing.`;

/** `import <file>`: cases from JSON Lines or CSV, all or nothing unless told otherwise. */
export function importCommand(io: CommandIo): Command {
  return new Command('import')
    .description('import cases from a JSON Lines or CSV file; they wait for review')
    .argument('<file>', 'the file')
    .option('--accept', 'accept them at once, for whoever runs the machine; this is logged')
    .option('--keep-good', 'import the good rows even if others are bad')
    .option('--json', 'print one JSON document')
    .addHelpText('after', HELP)
    .action(async (path: string, options: Options) => {
      const { good, refused } = await readRows(io, path);
      const source = basename(path);
      if (refused.length > 0)
        io.err(refused.map((r) => `${source}, line ${r.line}${r.field === '' ? '' : `, ${r.field}`}: ${r.reason}\n`).join(''));
      const holdBack = refused.length > 0 && !options.keepGood;
      const added = holdBack ? [] : await store(io, good, { source, accept: options.accept ?? false });
      const summary = {
        rows: good.length + badRows(refused),
        added: added.length,
        alreadyThere: holdBack ? 0 : good.length - added.length,
        refused,
      };
      if (options.json) printJson(io, summary);
      else if (!holdBack) {
        const how = options.accept ? 'accepted' : 'submitted for review';
        io.out(
          `${summary.added} of ${summary.rows} cases added (${how}), ${summary.alreadyThere} were there already, ${badRows(refused)} refused.\n`,
        );
      }
      if (holdBack)
        throw new CommandError(
          `Nothing was imported: ${badRows(refused)} of ${summary.rows} rows are bad. Correct them, or use --keep-good.`,
        );
    });
}

const badRows = (refused: readonly Refused[]) => new Set(refused.map((r) => r.line)).size;

async function readRows(io: CommandIo, path: string): Promise<{ good: GoodRow[]; refused: Refused[] }> {
  await access(path).catch(() => {
    throw new CommandError(`The file ${path} cannot be read.`);
  });
  const db = io.db();
  const catalogue = await findCatalogue(db);
  if (catalogue === null) throw new AppError('casebook-empty');
  const words = vocabularyWords(await loadVocabulary(db), catalogue);
  const good: GoodRow[] = [];
  const refused: Refused[] = [];
  for await (const row of readCaseFile(words, path)) {
    if ('case' in row) good.push(row);
    else refused.push(...row.problems.map((problem) => ({ line: row.line, ...problem })));
  }
  return { good, refused };
}

async function store(io: CommandIo, good: readonly GoodRow[], { source, accept }: { source: string; accept: boolean }) {
  const onProgress = (done: number) => {
    if (good.length > 1000) io.err(`${done} of ${good.length} rows\n`);
  };
  const { actor, newId } = io;
  return importCases(io.db(), { cases: good.map((row) => row.case), accept, source, actor, now: io.now(), newId, onProgress });
}
