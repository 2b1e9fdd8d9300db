import { access } from 'node:fs/promises';
import { basename } from 'node:path';
import { Command } from 'commander';
import { knownWordsOf } from '../../../shared/domain/anonymise/known-words';
import { vocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import { AppError } from '../../../shared/errors';
import { keepSnapshotFresh } from '../../casebook/keep-snapshot-fresh';
import { loadCasebook } from '../../casebook/load-casebook';
import { findCatalogue } from '../../repositories/catalogue-repository';
import { loadVocabulary } from '../../repositories/load-vocabulary';
import { readWordAliases } from '../../repositories/word-edit-repository';
import { importCases } from '../../services/import-cases';
import type { ReadRow } from '../case-files/case-row';
import { checkPersonalDetails, type FoundDetail } from '../case-files/check-personal-details';
import { CSV_COLUMNS } from '../case-files/csv-cells';
import { LIST_SYNTAX_HELP } from '../case-files/list-syntax';
import { readCaseFile } from '../case-files/read-case-file';
import { CommandError, type CommandIo, printJson } from '../io';

type Options = { accept?: boolean; keepGood?: boolean; replaceDetails?: boolean; json?: boolean };
type Refused = { line: number; field: string; reason: string };
type GoodRow = Extract<ReadRow, { case: unknown }>;

const HELP = `
A file whose name ends in .csv is CSV, any other is JSON Lines: one case per line, as "export" writes it.
CSV columns (id and status may be missing, the order is free): ${CSV_COLUMNS.join(', ')}.
${LIST_SYNTAX_HELP}
A row whose text holds personal details (names, contacts, places, serial numbers, exact dates) is refused, with what to
remove; --replace-details puts neutral words in their place.
Cases enter as submitted and wait for review. The same file twice adds nothing.`;

/** `import <file>`: cases from JSON Lines or CSV, all or nothing unless told otherwise. */
export function importCommand(io: CommandIo): Command {
  return new Command('import')
    .description('import cases from a JSON Lines or CSV file; they wait for review')
    .argument('<file>', 'the file')
    .option('--accept', 'accept them at once, for whoever runs the machine; this is logged')
    .option('--keep-good', 'import the good rows even if others are bad')
    .option('--replace-details', 'replace personal details in the text instead of refusing the row')
    .option('--json', 'print one JSON document')
    .addHelpText('after', HELP)
    .action(async (path: string, options: Options) => {
      const { good, refused, replaced } = await readRows(io, path, options.replaceDetails ?? false);
      const source = basename(path);
      for (const r of [...refused, ...replaced])
        io.err(`${source}, line ${r.line}${r.field === '' ? '' : `, ${r.field}`}: ${r.reason}\n`);
      const holdBack = refused.length > 0 && !options.keepGood;
      const added = holdBack ? [] : await store(io, good, { source, accept: options.accept ?? false });
      const summary = {
        rows: good.length + badRows(refused),
        added: added.length,
        alreadyThere: holdBack ? 0 : good.length - added.length,
        refused,
        ...(options.replaceDetails ? { replaced } : {}),
      };
      if (options.accept && added.length > 0) await keepSnapshotFresh(io.db(), await loadCasebook(io.db()));
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

type RowsRead = { good: GoodRow[]; refused: Refused[]; replaced: FoundDetail[] };

async function readRows(io: CommandIo, path: string, replace: boolean): Promise<RowsRead> {
  await access(path).catch(() => {
    throw new CommandError(`The file ${path} cannot be read.`);
  });
  const db = io.db();
  const catalogue = await findCatalogue(db);
  if (catalogue === null) throw new AppError('casebook-empty');
  const vocabulary = await loadVocabulary(db);
  const words = vocabularyWords(vocabulary, catalogue, await readWordAliases(db));
  const known = knownWordsOf(vocabulary, catalogue);
  const good: GoodRow[] = [];
  const refused: Refused[] = [];
  const replaced: FoundDetail[] = [];
  for await (const read of readCaseFile(words, path)) {
    const { row, replaced: here } = checkPersonalDetails(read, known, replace);
    replaced.push(...here);
    if ('case' in row) good.push(row);
    else refused.push(...row.problems.map((problem) => ({ line: row.line, ...problem })));
  }
  return { good, refused, replaced };
}

async function store(io: CommandIo, good: readonly GoodRow[], { source, accept }: { source: string; accept: boolean }) {
  const onProgress = (done: number) => {
    if (good.length > 1000) io.err(`${done} of ${good.length} rows\n`);
  };
  const { actor, newId } = io;
  return importCases(io.db(), { cases: good.map((row) => row.case), accept, source, actor, now: io.now(), newId, onProgress });
}
