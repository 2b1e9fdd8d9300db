import type { DeviceCategory } from '../../schemas/terms';
import type { Coding } from './coding';

export type StatedSymptoms = {
  /** What the list says of each symptom, by its number. */
  stated: ReadonlyMap<number, boolean>;
  /** Category of the device; null where it is not known: any symptom can then occur. */
  category: DeviceCategory | null;
  /** Whether the list holds everything that was seen. */
  complete: boolean;
};

/**
 * Symptoms that are absent although nobody said so, by number (their observables), in the vocabulary's order; only such as
 * can occur on the category. Always: what would have hidden a stated symptom. Whoever says that the picture is fine, or that
 * it is grey, could see one, so the unit is not dead. Where the list is complete, besides: every symptom not listed that
 * nothing present hides.
 */
export function impliedAbsences({ symptomHiders, symptomsOf }: Coding, { stated, category, complete }: StatedSymptoms): number[] {
  const couldHide = new Set<number>();
  for (const symptom of stated.keys()) for (const hider of symptomHiders[symptom] ?? []) couldHide.add(hider);
  if (!complete && couldHide.size === 0) return [];
  const occurring = symptomsOf(category);
  const isHidden = (symptom: number) => (symptomHiders[symptom] as readonly number[]).some((hider) => stated.get(hider) === true);
  return occurring.filter((symptom) => (complete || couldHide.has(symptom)) && !stated.has(symptom) && !isHidden(symptom));
}
