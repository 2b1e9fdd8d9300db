import { Command } from 'commander';
import { evaluateSearch, type SearchEvaluation } from '../../casebook/evaluate-search';
import { type CommandIo, printJson } from '../io';
import { wholeNumber } from '../option-parsers';
import { cell, table } from '../text-table';

type Options = { folds: number; seed: number; json?: boolean };

/** `evaluate-search`: how well similar cases are found, beside three plain ways of finding them. */
export function evaluateSearchCommand(io: CommandIo): Command {
  return new Command('evaluate-search')
    .description('hold out a part of the cases and measure how well cases with the same cause are found for it')
    .option('--folds <n>', 'parts that the cases are split into; one is held out', wholeNumber(2, 50), 5)
    .option('--seed <n>', 'seed of the split', wholeNumber(0, 2_147_483_647), 7)
    .option('--json', 'print one JSON document')
    .action(async ({ folds, seed, json }: Options) => {
      const started = io.now().getTime();
      const onProgress = (what: string) => io.err(`${((io.now().getTime() - started) / 1000).toFixed(0)} s: ${what}\n`);
      const result = await evaluateSearch(io.db(), { folds, seed, onProgress });
      if (json) printJson(io, result);
      else io.out(evaluationText(result));
    });
}

function evaluationText({ searched, heldOut, cuts }: SearchEvaluation): string {
  const heading = `${heldOut} held-out cases searched among ${searched}. Same cause in the first 1, 3, 10; nDCG@10; MRR; distinct causes in the first 10.\n`;
  const tables = cuts.map(({ cut, questions, results }) => {
    const rows = results.map((r) => [r.ranker, cell(r.hit1), cell(r.hit3), cell(r.hit10), cell(r.ndcg10), cell(r.mrr), cell(r.distinctCauses)]);
    return table(`${cut} (${questions} questions)`, rows);
  });
  return [heading, ...tables].join('\n');
}
