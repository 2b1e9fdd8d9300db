import { pick } from '../random';
import type { Random } from '../world';

/** How somebody types: what they shorten, whether they bother with capitals, how often a finger slips. */
export type Typist = (text: string) => string;

const SHORT: readonly (readonly [RegExp, string])[] = [
  [/\bcapacitors\b/g, 'caps'],
  [/\bcapacitor\b/g, 'cap'],
  [/\bprocessor\b/g, 'cpu'],
  [/\bvoltage regulator\b/g, 'reg'],
  [/\bexternal supply\b/g, 'psu'],
  [/\bbecause\b/g, 'cos'],
  [/\bwith\b/g, 'w/'],
  [/\band\b/g, '&'],
  [/\bvideo RAM\b/g, 'vram'],
  [/\bclock crystal\b/g, 'xtal'],
  [/\bconnector\b/g, 'conn'],
  [/\bcould not\b/g, 'couldnt'],
  [/\bdid not\b/g, "didn't"],
  [/\bwas not\b/g, "wasn't"],
  [/\bdo not\b/g, "don't"],
  [/\bwithout\b/g, 'w/o'],
  [/\bminutes\b/g, 'min'],
];
const SOFT: readonly (readonly [RegExp, string])[] = [
  [/\bdid not\b/g, "didn't"],
  [/\bwas not\b/g, "wasn't"],
  [/\bcould not\b/g, "couldn't"],
  [/\bdo not\b/g, "don't"],
  [/\bit is\b/g, "it's"],
  [/\bI had\b/g, "I'd"],
  [/\bwould not\b/g, "wouldn't"],
  [/\bthat is\b/g, "that's"],
];

/** Draws a typist. */
export function drawTypist(random: Random): Typist {
  const shortens = random() < 0.25 ? SHORT.filter(() => random() < 0.6) : random() < 0.6 ? SOFT : [];
  const capitals = random() < 0.8;
  const stops = random() < 0.85;
  const slips = random() < 0.35 ? 0.006 + 0.02 * random() : 0;
  const dropsI = random() < 0.2;
  return (text) => {
    let typed = shortens.reduce((all, [pattern, short]) => all.replace(pattern, short), text);
    if (dropsI)
      typed = typed.replace(/(^|[.!?] )I ([a-z])/g, (_, before: string, letter: string) => before + letter.toUpperCase());
    if (!capitals)
      typed = typed.replace(
        /(^|[.!?:] |\n(?:[-*>] )?)([A-Z])(?=[a-z' ])/g,
        (_, before: string, letter: string) => before + letter.toLowerCase(),
      );
    if (!stops) typed = typed.replace(/\.$/, '').replace(/\.\n/g, '\n');
    return slips > 0 ? typed.replace(/\b[a-z]{4,}\b/g, (word) => (random() < slips ? slip(random, word) : word)) : typed;
  };
}

/** One wrong keystroke: letters swapped, doubled or left out; never the first letter. */
function slip(random: Random, word: string): string {
  const at = 1 + Math.floor(random() * (word.length - 2));
  const [a, b] = [word[at] as string, word[at + 1] as string];
  return pick(random, [
    word.slice(0, at) + b + a + word.slice(at + 2),
    word.slice(0, at) + a + word.slice(at),
    word.slice(0, at) + word.slice(at + 1),
  ]);
}
