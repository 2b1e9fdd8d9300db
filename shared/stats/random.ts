/** Uniform numbers in [0, 1). */
export type Random = () => number;

/**
 * A seeded generator of uniform numbers in [0, 1) with 32 random bits: sfc32 (C. Doty-Humphrey, PractRand),
 * seeded through splitmix32 so that neighbouring seeds give unrelated streams.
 * @param seed any finite number; its lower 32 bits count
 */
export function createRandom(seed: number): Random {
  let mixed = seed | 0;
  const next = () => {
    mixed = (mixed + 0x9e3779b9) | 0;
    let t = mixed ^ (mixed >>> 16);
    t = Math.imul(t, 0x21f0aaad);
    t ^= t >>> 15;
    t = Math.imul(t, 0x735a2d97);
    return (t ^ (t >>> 15)) | 0;
  };
  let a = next();
  let b = next();
  let c = next();
  let counter = 1;
  const step = () => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + t;
    c |= 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i += 1) step();
  return step;
}

/** Shuffles in place (Fisher & Yates); returns the same array. */
export function shuffle<T>(items: T[], random: Random): T[] {
  for (let i = items.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    const held = items[i] as T;
    items[i] = items[j] as T;
    items[j] = held;
  }
  return items;
}
