/** A growing set of small whole numbers, one bit each. */
export type BitSet = { words: Uint32Array };

export function createBitSet(): BitSet {
  return { words: new Uint32Array(4) };
}

export function setBit(set: BitSet, at: number): void {
  const word = at >>> 5;
  if (word >= set.words.length) {
    const grown = new Uint32Array(Math.max(word + 1, set.words.length * 2));
    grown.set(set.words);
    set.words = grown;
  }
  set.words[word] = (set.words[word] as number) | (1 << (at & 31));
}

export function clearBit(set: BitSet, at: number): void {
  const word = at >>> 5;
  if (word < set.words.length) set.words[word] = (set.words[word] as number) & ~(1 << (at & 31));
}

/** Calls `visit` for each member, in ascending order. */
export function forEachBit(words: Uint32Array, visit: (at: number) => void): void {
  for (let w = 0; w < words.length; w += 1) {
    let word = words[w] as number;
    while (word !== 0) {
      visit(w * 32 + (31 - Math.clz32(word & -word)));
      word &= word - 1;
    }
  }
}

/** Keeps in `target` only what is in `set`. */
export function intersect(target: Uint32Array, set: BitSet | undefined): void {
  for (let w = 0; w < target.length; w += 1) target[w] = (target[w] as number) & (set?.words[w] ?? 0);
}
