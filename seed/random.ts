import type { Random } from './world';

/** 32-bit hash of a text (FNV-1a, then a finaliser): names a stream of random numbers, is no secret. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return scramble(hash);
}

function scramble(value: number): number {
  let x = value >>> 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return (x ^ (x >>> 16)) >>> 0;
}

/** Seeded uniform generator in [0, 1): a Weyl sequence through a 32-bit mixer; good enough to draw cases, no cipher. */
export function seededRandom(seed: number | string): Random {
  let state = typeof seed === 'string' ? hashText(seed) : scramble(seed ^ 0x9e3779b9);
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    return scramble(state) / 0x100000000;
  };
}

/** Standard normal deviate, by the method of Box and Muller (1958). */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Whole number from low to high, both included. */
export function integer(random: Random, low: number, high: number): number {
  return low + Math.floor(random() * (high - low + 1));
}

/** One of the items, each as likely; throws on an empty list. */
export function pick<T>(random: Random, items: readonly T[]): T {
  if (items.length === 0) throw new Error('Nothing to pick from.');
  return items[Math.floor(random() * items.length)] as T;
}

/** Index drawn in proportion to the weights, which need not sum to 1; the last positive one where rounding overshoots. */
export function pickIndex(random: Random, weights: ArrayLike<number>): number {
  let total = 0;
  for (let i = 0; i < weights.length; i += 1) total += weights[i] as number;
  let left = random() * total;
  let last = 0;
  for (let i = 0; i < weights.length; i += 1) {
    const weight = weights[i] as number;
    if (weight <= 0) continue;
    last = i;
    left -= weight;
    if (left < 0) return i;
  }
  return last;
}

/** One item, drawn in proportion to its weight. */
export function pickWeighted<T>(random: Random, items: readonly (readonly [T, number])[]): T {
  return (
    items[
      pickIndex(
        random,
        items.map(([, weight]) => weight),
      )
    ] as readonly [T, number]
  )[0];
}

/** A new list in random order (Fisher and Yates). */
export function shuffled<T>(random: Random, items: readonly T[]): T[] {
  const list = [...items];
  for (let i = list.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    [list[i], list[j]] = [list[j] as T, list[i] as T];
  }
  return list;
}
