import type { Role } from '../../schemas/vocabulary';

const LONGEST_NAME = 4;

/**
 * Returns a function that gives a phrase once more for every other name of a part that it contains:
 * "clock at the processor" → "clock at the cpu". Of names inside one another the longest counts.
 */
export function roleRenamer(roles: readonly Pick<Role, 'label' | 'synonyms'>[]): (phrase: string) => string[] {
  const namesOf = new Map<string, Set<string>>();
  for (const role of roles) {
    const names = [role.label, ...role.synonyms].map((n) => n.toLowerCase());
    for (const name of names) {
      const others = namesOf.get(name) ?? new Set<string>();
      for (const other of names) if (other !== name) others.add(other);
      namesOf.set(name, others);
    }
  }
  return (phrase) => {
    const words = phrase.toLowerCase().split(/\s+/);
    for (let length = Math.min(LONGEST_NAME, words.length); length > 0; length -= 1) {
      for (let at = 0; at + length <= words.length; at += 1) {
        const others = namesOf.get(words.slice(at, at + length).join(' '));
        if (others !== undefined)
          return [...others].map((other) => [...words.slice(0, at), other, ...words.slice(at + length)].join(' '));
      }
    }
    return [];
  };
}
