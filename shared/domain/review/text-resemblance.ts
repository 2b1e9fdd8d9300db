/** Words in one shingle. */
const SHINGLE = 3;

/** The runs of `size` words of a text, each once: its shingling. A text of fewer words is one shingle. */
export function shinglesOf(text: string, size = SHINGLE): Set<string> {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  if (words.length === 0) return new Set();
  if (words.length <= size) return new Set([words.join(' ')]);
  return new Set(Array.from({ length: words.length - size + 1 }, (_, i) => words.slice(i, i + size).join(' ')));
}

/**
 * Resemblance of two shinglings, 0 to 1: what they share of all they hold. 0 where either is empty.
 * A. Z. Broder, "On the resemblance and containment of documents", Compression and Complexity of Sequences 1997, 21-29.
 */
export function resemblance(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  if (a.size === 0 || b.size === 0) return 0;
  const shared = sharedCount(a, b);
  return shared / (a.size + b.size - shared);
}

/** Containment of the smaller of two shinglings in the larger, 0 to 1; of the same paper. 0 where either is empty. */
export function containment(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  return a.size === 0 || b.size === 0 ? 0 : sharedCount(a, b) / Math.min(a.size, b.size);
}

function sharedCount(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  const [small, large] = a.size < b.size ? [a, b] : [b, a];
  let shared = 0;
  for (const shingle of small) if (large.has(shingle)) shared += 1;
  return shared;
}
