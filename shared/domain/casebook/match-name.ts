import { distance } from 'fastest-levenshtein';

/** Something that has a name and goes by others too. */
export type Named = { label: string; synonyms: readonly string[] };

/** The words of a name, in lower case. */
export function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

/**
 * How well what was typed so far fits a name: 0 is best; the label counts before synonyms, an exact beginning before a
 * slip. Every word typed must begin a word of the name; one of four letters or more may be one slip off. Null where a
 * word fits nowhere.
 */
export function scoreNamed(entry: Named, typed: readonly string[]): number | null {
  let best: number | null = null;
  [entry.label, ...entry.synonyms].forEach((name, index) => {
    const score = scoreName(wordsOf(name), typed);
    if (score === null) return;
    const whole = score + (index === 0 ? 0 : 1);
    if (best === null || whole < best) best = whole;
  });
  return best;
}

function scoreName(name: readonly string[], typed: readonly string[]): number | null {
  let score = name[0]?.startsWith(typed[0] ?? '') ? 0 : 0.5;
  for (const word of typed) {
    if (name.some((other) => other.startsWith(word))) continue;
    if (word.length < 4 || !name.some((other) => isOneSlipOff(other, word))) return null;
    score += 2;
  }
  return score;
}

/** A letter too many, too few or wrong, against the beginning of the other word. */
function isOneSlipOff(other: string, word: string): boolean {
  return [-1, 0, 1].some((longer) => distance(other.slice(0, word.length + longer), word) <= 1);
}
