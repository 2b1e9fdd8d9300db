/** Sets of small whole numbers, one bit each, 32 to a word. */
export type BitWords = Uint32Array;

/** Puts a number into a set that has room for it. */
export function setBit(words: BitWords, at: number): void {
  words[at >>> 5] = (words[at >>> 5] as number) | (1 << (at & 31));
}

/** Takes a number out. */
export function clearBit(words: BitWords, at: number): void {
  words[at >>> 5] = (words[at >>> 5] as number) & ~(1 << (at & 31));
}

/** Whether a number is in. */
export function hasBit(words: BitWords, at: number): boolean {
  return (((words[at >>> 5] as number) >>> (at & 31)) & 1) === 1;
}

/** Puts every member of another set in, as far as there is room. */
export function addBits(words: BitWords, others: BitWords): void {
  const length = Math.min(words.length, others.length);
  for (let w = 0; w < length; w += 1) words[w] = (words[w] as number) | (others[w] as number);
}

/** Calls `visit` for each member, in ascending order. */
export function forEachBit(words: BitWords, visit: (at: number) => void): void {
  for (let w = 0; w < words.length; w += 1) {
    let word = words[w] as number;
    while (word !== 0) {
      visit(w * 32 + (31 - Math.clz32(word & -word)));
      word &= word - 1;
    }
  }
}

/** How many bits of a word are set. */
export function countWord(word: number): number {
  // Sums of neighbouring bits, then pairs, then nibbles (H. S. Warren, Hacker's Delight, 2nd ed., figure 5-2).
  let x = word - ((word >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  x = (x + (x >>> 4)) & 0x0f0f0f0f;
  return Math.imul(x, 0x01010101) >>> 24;
}

/** How many members there are. */
export function countBits(words: BitWords): number {
  let count = 0;
  for (let w = 0; w < words.length; w += 1) count += countWord(words[w] as number);
  return count;
}
