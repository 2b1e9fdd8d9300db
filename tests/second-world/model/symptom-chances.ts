import { vocabulary } from '../../../seed/vocabulary';
import type { Symptom } from '../../../shared/schemas/vocabulary';
import type { DeviceCategory } from '../../../shared/schemas/terms';
import { detail, normalDetail } from '../seeded-random';
import type { BoardPrior } from './board-priors';
import type { CauseRow } from './cause-table';
import { possiblePictures } from './possible-pictures';
import { type SyndromeName, syndromes } from './syndromes';

/** Spread, on the logit scale, that sets two causes with the same kind of picture apart. */
const CAUSE_SPREAD = 0.55;

/** Symptoms a category can show, in an order where every hider stands before what it hides. */
export type SymptomOrder = { slugs: string[]; index: Map<string, number>; hiders: number[][] };

function closure(symptom: Symptom, bySlug: Map<string, Symptom>, into = new Set<string>()): Set<string> {
  for (const slug of symptom.hiddenBy) {
    const hider = bySlug.get(slug);
    if (!hider || into.has(slug)) continue;
    into.add(slug);
    closure(hider, bySlug, into);
  }
  return into;
}

/**
 * Order and hiders of a category's symptoms. A symptom is hidden by those of its `hiddenBy` that the category
 * can show and by whatever hides these, so that a symptom that was seen proves all its hiders absent.
 */
export function symptomOrder(category: DeviceCategory): SymptomOrder {
  const symptoms = vocabulary.symptoms.filter((symptom) => symptom.categories.includes(category));
  const bySlug = new Map(symptoms.map((symptom) => [symptom.slug, symptom]));
  const hidersOf = new Map(symptoms.map((symptom) => [symptom.slug, closure(symptom, bySlug)]));
  const slugs = symptoms
    .map((symptom) => symptom.slug)
    .sort((a, b) => hidersOf.get(a)!.size - hidersOf.get(b)!.size || (a < b ? -1 : 1));
  const index = new Map(slugs.map((slug, i) => [slug, i]));
  return { slugs, index, hiders: slugs.map((slug) => [...hidersOf.get(slug)!].map((hider) => index.get(hider)!)) };
}

const bySlug = new Map(vocabulary.symptoms.map((symptom) => [symptom.slug, symptom]));
const hidesOthers = new Set(vocabulary.symptoms.flatMap((symptom) => symptom.hiddenBy));

/** Chance that a unit shows a symptom for reasons of its own: age and wear more than anything else. */
export function background(symptom: string): number {
  const entry = bySlug.get(symptom)!;
  const scale = hidesOthers.has(symptom)
    ? 0.0012
    : entry.area === 'mechanical-battery'
      ? 0.02
      : entry.area === 'input'
        ? 0.008
        : 0.004;
  return scale * (0.5 + 1.2 * detail(`background ${symptom}`));
}

/**
 * P(symptom | cause, fault picture) for the symptoms in the order given. Given the picture symptoms are
 * independent of each other; what makes them correlate is that they share the picture.
 */
export function symptomChances(row: CauseRow, picture: SyndromeName, slugs: readonly string[]): Float64Array {
  const kernel: Record<string, number> = syndromes[picture].symptoms;
  return Float64Array.from(slugs, (slug) => {
    const base = kernel[slug];
    if (base === undefined) return background(slug);
    const shift = CAUSE_SPREAD * normalDetail(`symptom ${row.cause} ${picture} ${slug}`);
    const shifted = 1 / (1 + Math.exp(-(Math.log(base / (1 - base)) + shift)));
    return Math.min(0.985, Math.max(0.01, shifted + (1 - shifted) * background(slug)));
  });
}

/** A cause's pictures on a board with their weights, which sum to 1: the cause's own, shifted a little per board. */
export function boardPictures(row: CauseRow, board: BoardPrior): { picture: SyndromeName; weight: number }[] {
  const possible = possiblePictures(row, board);
  const raw = possible.map(
    ([name, weight]) => weight * Math.exp(0.3 * normalDetail(`weight ${board.slug} ${row.cause} ${name}`)),
  );
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return possible.map(([picture], k) => ({ picture, weight: raw[k]! / total }));
}
