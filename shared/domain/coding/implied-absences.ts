import type { DeviceCategory } from '../../schemas/terms';
import type { Coding } from './coding';

export type StatedSymptoms = {
  /** What the list says of each symptom, by its number. */
  stated: ReadonlyMap<number, boolean>;
  /** Category of the device; null where it is not known: any symptom can then occur. */
  category: DeviceCategory | null;
  /** Whether the list holds everything that was seen. */
  complete: boolean;
  /** Symptoms, by number, of whose subject it was said that all is well ("picture fine"), not only that it is there. */
  fine?: ReadonlySet<number>;
};

/**
 * Symptoms that are absent although nobody said so, by number (their observables), in the vocabulary's order; only such as
 * can occur on the category. Always: what would have hidden a stated symptom. Whoever says that the picture is fine, or that
 * it is grey, could see one, so the unit is not dead. Of what is fine: what no picture would have hidden about the picture (the
 * hidden symptoms of the same area) is absent too, since a picture that rolls is not fine. Where the list is complete, besides:
 * every symptom not listed that nothing present hides.
 */
export function impliedAbsences(coding: Coding, { stated, category, complete, fine = new Set() }: StatedSymptoms): number[] {
  const { symptomHiders, symptomsOf, vocabulary } = coding;
  const couldHide = new Set<number>();
  for (const symptom of stated.keys()) for (const hider of symptomHiders[symptom] ?? []) couldHide.add(hider);
  if (!complete && couldHide.size === 0 && fine.size === 0) return [];
  const areaOf = (symptom: number) => vocabulary.symptoms[symptom]?.area;
  const isFine = (symptom: number) =>
    (symptomHiders[symptom] as readonly number[]).some((hider) => fine.has(hider) && areaOf(hider) === areaOf(symptom));
  const occurring = symptomsOf(category);
  const isHidden = (symptom: number) => (symptomHiders[symptom] as readonly number[]).some((hider) => stated.get(hider) === true);
  return occurring.filter((symptom) => (complete || couldHide.has(symptom) || isFine(symptom)) && !stated.has(symptom) && !isHidden(symptom));
}
