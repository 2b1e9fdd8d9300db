import type { DeviceCategory } from '../../schemas/terms';
import type { Coding } from './coding';

/**
 * Symptoms that are absent because the list of those seen is complete: not listed themselves, able to occur on
 * the device's category (any, where it is not known), and hidden by nothing that is present.
 * @param stated what the list says of each symptom, by slug
 */
export function impliedAbsences(coding: Coding, stated: ReadonlyMap<string, boolean>, category: DeviceCategory | null): string[] {
  return coding.vocabulary.symptoms
    .filter((symptom) => !stated.has(symptom.slug))
    .filter((symptom) => category === null || symptom.categories.includes(category))
    .filter((symptom) => !symptom.hiddenBy.some((slug) => stated.get(slug) === true))
    .map((symptom) => symptom.slug);
}
