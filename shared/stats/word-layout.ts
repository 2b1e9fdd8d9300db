/** Where in the words of a row what stands; they are written by `addWords`. `start` is the place of a row's first word. */

/** Set in the first word of a designator that takes two. */
export const TWO_WORDS = 0x8000;
/** How many words a designator takes. */
export const wordsOf = (designator: number) => (designator < TWO_WORDS ? 1 : 2);
/** How many words hold the steps of so many findings. */
export const infoWords = (findings: number) => (findings + 1) >>> 1;

/** Where the first flat value of a row stands, the first word being at `start`. */
export function flatsFrom(words: Uint16Array, start: number): number {
  return start + 1 + ((words[start] as number) & 1);
}

/** Where the flat values that a row states end: late ones stand behind. */
export function statedEnd(words: Uint16Array, start: number): number {
  const head = words[start] as number;
  return flatsFrom(words, start) + (head >>> 1) - ((head & 1) === 1 ? (words[start + 1] as number) : 0);
}

/** Step and whether it proves, of the nth finding. */
export function infoAt(words: Uint16Array, start: number, n: number): number {
  const from = flatsFrom(words, start) + ((words[start] as number) >>> 1);
  return ((words[from + (n >>> 1)] as number) >>> ((n & 1) * 8)) & 0xff;
}

/** Where the causes of a row begin. */
export function causesFrom(words: Uint16Array, start: number): number {
  const findings = (words[start] as number) >>> 1;
  return flatsFrom(words, start) + findings + infoWords(findings);
}
