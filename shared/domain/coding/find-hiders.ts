import type { Symptom } from '../../schemas/vocabulary';

/**
 * For each symptom, by slug, everything that makes it impossible to see: what hides it, what hides that, and so on. A symptom
 * never hides itself, even where the vocabulary's `hiddenBy` runs in a circle.
 */
export function findHiders(symptoms: readonly Symptom[]): Map<string, readonly string[]> {
  const direct = new Map(symptoms.map(({ slug, hiddenBy }) => [slug, hiddenBy]));
  return new Map(
    symptoms.map(({ slug }) => {
      const found = new Set<string>();
      const open = [slug];
      for (let next = open.pop(); next !== undefined; next = open.pop()) {
        for (const hider of direct.get(next) ?? []) {
          if (hider === slug || found.has(hider)) continue;
          found.add(hider);
          open.push(hider);
        }
      }
      return [slug, [...found]];
    }),
  );
}
