import { matchesOf } from '../text/matches-of';

/** Words with capitals that follow one another: "Then Sarah van Dorn", "J. Porter", "Mr Ellis". */
export type CapitalRun = { words: RunWord[]; start: number; end: number };
export type RunWord = { text: string; start: number; end: number };

const WORD = String.raw`(?:\p{Lu}\.(?:-?\p{Lu}\.)*|(?:O['’]|Mc|Mac|D['’])?\p{Lu}\p{Ll}+(?:[-'’]\p{Lu}\p{Ll}+)*\.?|\p{Lu}(?=[ ]\p{Lu}\p{Ll}))`;
const PARTICLE = String.raw`(?:van|von|de|der|den|la|le|du|di|da|del|ter|zu|of|upon|the)`;
const RUN = new RegExp(String.raw`(?<![\p{L}\p{N}_@#/.-])${WORD}(?: (?:${PARTICLE} ){0,2}${WORD}){0,3}(?![\p{N}_])`, 'gu');
/** After these a dot belongs to the word; after any other it ends the sentence. */
const DOTTED = /^(?:Mr|Mrs|Ms|Dr|Prof|St|Hr|Fr|Mme|Mlle)\.$|^(?:\p{Lu}\.)/u;

/** The runs of a text, cut at each full stop that ends a sentence. */
export function* capitalRuns(text: string): Generator<CapitalRun> {
  for (const match of matchesOf(text, RUN)) {
    let words: RunWord[] = [];
    for (const part of matchesOf(match[0], /\S+/gu)) {
      const start = match.index + part.index;
      const stops = part[0].endsWith('.') && !DOTTED.test(part[0]);
      const word = stops ? part[0].slice(0, -1) : part[0];
      words.push({ text: word, start, end: start + word.length });
      if (stops) {
        yield runOf(words);
        words = [];
      }
    }
    if (words.length > 0) yield runOf(words);
  }
}

export function runOf(words: RunWord[]): CapitalRun {
  return { words, start: words[0]?.start ?? 0, end: words.at(-1)?.end ?? 0 };
}
