import type { DeviceCategory } from '../../schemas/terms';
import type { Coding } from './coding';

export type StatedSymptoms = {
  /** What the list says of each symptom, by slug. */
  stated: ReadonlyMap<string, boolean>;
  /** Category of the device; null where it is not known: any symptom can then occur. */
  category: DeviceCategory | null;
  /** Whether the list holds everything that was seen. */
  complete: boolean;
};

/**
 * Symptoms that are absent although nobody said so, in the vocabulary's order; only such as can occur on the category.
 * Always: what would have hidden a stated symptom. Whoever says that the picture is fine, or that it is grey, could
 * see one, so the unit is not dead. Where the list is complete, besides: every symptom not listed that nothing present hides.
 */
export function impliedAbsences(coding: Coding, { stated, category, complete }: StatedSymptoms): string[] {
  const couldHide = new Set<string>();
  for (const slug of stated.keys()) for (const hider of coding.hidersOf(slug)) couldHide.add(hider);
  if (!complete && couldHide.size === 0) return [];
  return coding.vocabulary.symptoms
    .filter(({ slug }) => !stated.has(slug) && (complete || couldHide.has(slug)))
    .filter(({ categories }) => category === null || categories.includes(category))
    .filter(({ slug }) => !coding.hidersOf(slug).some((hider) => stated.get(hider) === true))
    .map(({ slug }) => slug);
}
