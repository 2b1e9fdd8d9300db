import type { CaseContent } from '../../shared/schemas/case';
import { shuffled } from '../random';
import type { Random, SimulatedUnit } from '../world';

export type SymptomList = Pick<CaseContent, 'symptoms' | 'symptomsComplete'>;

/** P(the list is said to be complete), and in other lists P(a present symptom is noted). */
const COMPLETE = 0.6;
const NOTED = 0.76;

/**
 * What a contributor writes of the symptoms: all of them where the list is complete, otherwise most of those present
 * and now and then one that is absent ("sound fine"). At least one is noted.
 */
export function symptomList(random: Random, unit: SimulatedUnit): SymptomList {
  const present = shuffled(
    random,
    unit.symptoms.filter((each) => each.present),
  );
  const absent = shuffled(
    random,
    unit.symptoms.filter((each) => !each.present),
  );
  const symptomsComplete = random() < COMPLETE;
  const noted = symptomsComplete ? present : present.filter((_, index) => index === 0 || random() < NOTED);
  const ruledOut = absent.slice(0, random() < 0.3 ? 1 + Math.floor(2 * random()) : 0);
  return { symptoms: [...noted, ...ruledOut].map(({ symptom, present: is }) => ({ symptom, present: is })), symptomsComplete };
}
