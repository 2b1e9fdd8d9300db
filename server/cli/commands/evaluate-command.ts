import { Command } from 'commander';
import { type EvaluateOptions, evaluateTable, type TableEvaluation } from '../../../shared/stats/evaluate-table';
import { evaluateCasebook } from '../../casebook/evaluate-casebook';
import type { KnownWorld } from '../../casebook/known-world';
import { CommandError, type CommandIo, printJson } from '../io';
import { wholeNumber } from '../option-parsers';
import { readTable } from '../read-table';
import { casebookText, scoresText } from '../evaluation-text';

type Options = { table?: string; causeColumn?: string; folds: number; repeats?: number; seed: number; demo?: boolean; units: number; compare?: number; json?: boolean };

/** How often a table is split: it is small, and quickly done. */
const TABLE_REPEATS = 3;

/** `evaluate`: scores the estimators on held-out cases of the casebook, or on any table. */
export function evaluateCommand(io: CommandIo): Command {
  return new Command('evaluate')
    .description('refit without each fold and score what was held out, on the casebook or on any CSV table')
    .option('--table <file>', 'a CSV table with a header, instead of the casebook; empty cells and ? are missing')
    .option('--cause-column <name>', 'the column of the table that is to be predicted')
    .option('--folds <n>', 'parts that the cases are split into', wholeNumber(2, 50), 10)
    .option('--repeats <n>', 'how often they are split; by itself 3 times, on a casebook of 1,000 cases or more once', wholeNumber(1, 20))
    .option('--seed <n>', 'seed of the splits', wholeNumber(0, 2_147_483_647), 7)
    .option('--compare <n>', 'look at n cases of each part only, and score AODE and TAN, too (a second or two a case)', wholeNumber(1, 10_000))
    .option('--demo', "hold the demo's cases against the exact probabilities of their world, and simulate repairs in it")
    .option('--units <n>', 'with --demo: invented units to repair by the plan, the first check and habits', wholeNumber(0, 100_000), 200)
    .option('--json', 'print one JSON document')
    .action(async (options: Options) => {
      if (options.table !== undefined) {
        const { folds, repeats = TABLE_REPEATS, seed } = options;
        const result = tableJson(await onTable(options.table, options.causeColumn, { folds, repeats, seed }));
        if (options.json) printJson(io, result);
        else
          io.out(scoresText(`${result.rows} rows, ${result.causes} causes, ${folds} folds, ${repeats} repeats`, result.results));
        return;
      }
      const { evaluation, repairs } = await onCasebook(io, options);
      if (options.json) printJson(io, evaluation);
      else io.out(`${casebookText(evaluation)}${repairs.map((line) => `${line}\n`).join('')}`);
    });
}

/** Tells on the error stream how far it is, since ten refits of thousands of cases take minutes. */
async function onCasebook(io: CommandIo, { folds, repeats, seed, demo, units, compare }: Options) {
  const world = demo ? await demoWorld(io) : null;
  const simulates = world !== null && units > 0;
  io.err('Refitting without each part; on thousands of cases each takes up to half a minute.\n');
  const evaluation = await evaluateCasebook(
    io.db(),
    {
      folds,
      seed,
      onProgress: progress(io, 'parts', simulates ? `, then ${units} units to repair` : ''),
      ...(repeats !== undefined && { repeats }),
      ...(compare !== undefined && { compareOn: compare }),
      ...(world && { known: { world, units, onUnit: everyTwenty(progress(io, 'units'), units) } }),
    },
    { now: io.now(), newId: io.newId },
  );
  return { evaluation, repairs: world && evaluation.knownTruth?.repairs ? world.repairLines(evaluation.knownTruth.repairs) : [] };
}

function demoWorld(io: CommandIo): Promise<KnownWorld> {
  if (io.demoWorld === undefined) throw new CommandError('The demo world is not at hand here. Run it as: npm run --silent cli -- evaluate --demo', 'usage');
  return io.demoWorld();
}

/** Says how many are done, how long the rest will take at that pace, and what comes after. */
function progress(io: CommandIo, what: string, after = ''): (done: number, of: number) => void {
  let started: number | null = null;
  let before = 0;
  return (done, of) => {
    const now = io.now().getTime();
    // Counted from the first call, since what came before it (reading the casebook) says nothing about the pace.
    if (started === null) [started, before] = [now, done];
    const each = (now - started) / (done - before);
    const left = done === before || done === of ? '' : `, about ${formatWait(each * (of - done))} left`;
    io.err(`${done} of ${of} ${what} done${left}${after}\n`);
  };
}

/** So many milliseconds in seconds, or from two minutes on in minutes. */
function formatWait(milliseconds: number): string {
  const seconds = milliseconds / 1000;
  return seconds < 120 ? `${Math.ceil(seconds)} s` : `${Math.round(seconds / 60)} min`;
}

function everyTwenty(tell: (done: number, of: number) => void, of: number): (done: number) => void {
  return (done) => {
    if (done === 1 || done % 20 === 0 || done === of) tell(done, of);
  };
}

async function onTable(path: string, causeColumn: string | undefined, options: EvaluateOptions): Promise<TableEvaluation> {
  if (causeColumn === undefined) throw new CommandError('Name the column to be predicted with --cause-column.', 'usage');
  const { columns, rows } = await readTable(path);
  if (!columns.includes(causeColumn)) {
    throw new CommandError(`The table has no column "${causeColumn}". It has: ${columns.join(', ')}.`);
  }
  try {
    return evaluateTable(rows, causeColumn, options);
  } catch (error) {
    if (error instanceof RangeError) throw new CommandError(`The table cannot be evaluated: ${error.message}`);
    throw error;
  }
}

type Scored = { estimator: string; accuracy: number; top3: number; logLoss: number; brier: number; ece: number };

function tableJson({ rows, causes, folds, repeats, results }: TableEvaluation) {
  return { rows, causes, folds, repeats, results: results.map(scoreOnly) };
}

/** The scores by themselves, log loss in nats, all shares 0 to 1. */
function scoreOnly({ estimator, accuracy, top3, logLoss, brier, ece }: Scored): Scored {
  return { estimator, accuracy, top3, logLoss, brier, ece };
}
