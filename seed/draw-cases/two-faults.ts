import type { FixResult } from '../../shared/schemas/case';
import type { Vocabulary } from '../../shared/schemas/vocabulary';
import type { SimulatedUnit } from '../world';

/**
 * A unit with a second fault besides its first: a check shows whichever is off, and only the cure of both is a cure.
 * Returns null where the second fault would hide what the first shows.
 */
export function withSecondFault(first: SimulatedUnit, second: SimulatedUnit, vocabulary: Vocabulary): SimulatedUnit | null {
  if (first.cause === second.cause || first.cause === 'no-fault-found' || second.cause === 'no-fault-found') return null;
  const hiding = new Set(vocabulary.symptoms.flatMap((symptom) => symptom.hiddenBy));
  const more = new Set(second.symptoms.filter((each) => each.present).map((each) => each.symptom));
  if ([...more].some((symptom) => hiding.has(symptom))) return null;
  const working = new Map(vocabulary.checks.map((check) => [check.slug, check.workingOutcome]));
  const addresses = new Map(vocabulary.fixes.map((fix) => [fix.slug, fix.addresses]));
  const cured = new Set<string>();
  const fix = (slug: string): FixResult => {
    const aimedAtSecond = addresses.get(slug)?.includes(second.cause) && !addresses.get(slug)?.includes(first.cause);
    const unit = aimedAtSecond ? second : first;
    const result = unit.fix(slug);
    if (result !== 'cured') return result;
    cured.add(unit.cause);
    return cured.size === 2 ? 'cured' : 'partly';
  };
  return {
    ...first,
    symptoms: first.symptoms.map(({ symptom, present }) => ({ symptom, present: present || more.has(symptom) })),
    check: (slug) => (first.check(slug) === working.get(slug) ? second.check(slug) : first.check(slug)),
    fix,
  };
}
