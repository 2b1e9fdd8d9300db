import type { Random } from '../../seed/world';

/** 32-bit FNV-1a of a text: the same text always gives the same number. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}

/** Uniform numbers in [0, 1) from a 32-bit seed: a Weyl sequence through the murmur3 finaliser. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return ((z ^ (z >>> 16)) >>> 0) / 4294967296;
  };
}

/** Uniform number in [0, 1) that belongs to a key: the written detail of the model. */
export function detail(key: string): number {
  const random = seededRandom(hashText(key));
  random();
  return random();
}

/** Roughly normal number (mean 0, standard deviation 1) that belongs to a key: 12 uniforms less 6. */
export function normalDetail(key: string): number {
  const random = seededRandom(hashText(key));
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += random();
  return sum;
}

/** Index drawn in proportion to weights that sum to `total`. */
export function pickIndex(random: Random, weights: ArrayLike<number>, total: number): number {
  let left = random() * total;
  for (let i = 0; i < weights.length; i += 1) {
    left -= weights[i] ?? 0;
    if (left < 0) return i;
  }
  return weights.length - 1;
}
