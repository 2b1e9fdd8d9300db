import type { FindingOption } from '../../_address/vocabulary-entry';

const SHOWN_MOST = 12;

/**
 * Options that hold every word written so far, at most twelve: those whose label opens with the words first,
 * then those whose label holds them, then those found by a synonym. Nothing for blank text.
 */
export function matchOptions(options: FindingOption[], text: string): FindingOption[] {
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return [];
  const rank = (option: FindingOption): number => {
    const label = option.label.toLowerCase();
    if (label.startsWith(words.join(' '))) return 0;
    return words.every((word) => label.includes(word)) ? 1 : 2;
  };
  return options
    .filter((option) => words.every((word) => option.words.includes(word)))
    .map((option) => ({ option, rank: rank(option) }))
    .sort((a, b) => a.rank - b.rank || a.option.label.localeCompare(b.option.label, 'en-GB'))
    .slice(0, SHOWN_MOST)
    .map((entry) => entry.option);
}
