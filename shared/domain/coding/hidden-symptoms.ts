import type { Coding } from './coding';

/**
 * Of the symptoms that a list states, those that cannot be seen beside another that is present, and what hides each, by number. A
 * dead unit has no picture whatever its cause, so "dead, no picture" says no more than "dead". Of two that hide each other both
 * stand. For questions: in a case the list is kept as it was posted, so that what is counted is what was written.
 */
export function hiddenSymptoms({ symptomHiders }: Coding, stated: ReadonlyMap<number, boolean>): Map<number, number> {
  const hidden = new Map<number, number>();
  for (const symptom of stated.keys()) {
    const hider = symptomHiders[symptom]?.find((other) => stated.get(other) === true && !symptomHiders[other]?.includes(symptom));
    if (hider !== undefined) hidden.set(symptom, hider);
  }
  return hidden;
}
