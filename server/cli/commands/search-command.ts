import { Command, InvalidArgumentError, Option } from 'commander';
import {
  FILTER_NAMES,
  type FilterName,
  isFilterValue,
  SEARCH_SORTS,
  type SearchFilters,
  type SearchResult,
  type SearchSort,
  searchQuerySchema,
} from '../../../shared/schemas/search';
import { type CommandIo, printJson } from '../io';
import { wholeNumber } from '../option-parsers';
import { table } from '../text-table';

type Options = { filter: SearchFilters; sort: SearchSort; take: number; cursor?: string; json?: boolean };

/** `search "<words>"`: cases by words and filters. */
export function searchCommand(io: CommandIo): Command {
  return new Command('search')
    .description('find cases by words: any order, "a phrase" in quotes, -word to leave out')
    .argument('[words]', 'what to look for; nothing lists every case that the filters leave', '')
    .option('--filter <name=value>', `narrow by ${FILTER_NAMES.join(', ')}; may be repeated`, addFilter, {})
    .addOption(new Option('--sort <order>', 'order of the cases').choices(SEARCH_SORTS).default('relevance'))
    .option('--take <n>', 'cases to print', wholeNumber(1, 100), 20)
    .option('--cursor <text>', 'goes on where the page before ended: its "next"')
    .option('--json', 'print one JSON document')
    .action(async (words: string, options: Options) => {
      const { filter, sort, take, cursor = null } = options;
      const found = await io.search().search(searchQuerySchema.parse({ text: words, filters: filter, sort, take, cursor }));
      if (options.json) printJson(io, searchJson(found));
      else io.out(searchText(found));
    });
}

function addFilter(text: string, before: SearchFilters): SearchFilters {
  const [name = '', value = ''] = text.split(/=(.*)/s);
  const known = FILTER_NAMES.find((other) => other === name);
  if (known === undefined) throw new InvalidArgumentError(`There is no filter "${name}". There are: ${FILTER_NAMES.join(', ')}.`);
  if (!isFilterValue(known, value)) throw new InvalidArgumentError(`"${value}" is no value of the filter "${name}".`);
  return { ...before, [known]: [...(before[known] ?? []), value] };
}

type Found = SearchResult & { fellBack: boolean };

/** The result as the command line prints it; snippets are plain text. */
function searchJson({ engine, total, hits, facets, matched, corrections, unknown, next, fellBack }: Found) {
  return {
    engine,
    total,
    hits: hits.map(({ id, score, snippet, highlights }) => ({ id, score, snippet, highlights })),
    facets,
    matched,
    corrections,
    unknown,
    next,
    fellBack,
  };
}

function searchText({ engine, total, hits, facets, matched, corrections, unknown, fellBack }: Found): string {
  const parts = [
    `${total} cases${matched === 'some' ? ', few of them with all of these words' : ''} (${engine}${fellBack ? ', the search server does not answer' : ''}).\n`,
    corrections.map(({ typed, meant }) => `Searched for "${meant}" instead of "${typed}".\n`).join(''),
    unknown.length > 0 ? `In no case: ${unknown.join(', ')}.\n` : '',
    table('Cases', hits.map(({ id, score, snippet }) => [id, score.toFixed(2), snippet])),
    facets === null ? '' : table('Among them', FILTER_NAMES.flatMap((name) => facetRow(name, facets[name]))),
  ];
  return parts.filter((part) => part !== '').join('\n');
}

const VALUES_SHOWN = 6;

function facetRow(name: FilterName, counts: Record<string, number>): string[][] {
  const entries = Object.entries(counts).sort((a, b) => b[1] - a[1]);
  if (entries.length === 0) return [];
  return [[name, entries.slice(0, VALUES_SHOWN).map(([value, cases]) => `${value} ${cases}`).join(', ')]];
}
