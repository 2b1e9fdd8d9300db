import { vocabulary } from '../../../seed/vocabulary';
import type { Instrument } from '../../../shared/schemas/terms';
import type { Cause, Check } from '../../../shared/schemas/vocabulary';
import { detail } from '../seeded-random';
import { crossRule, isBlind } from './cross-checks';
import { modeOutcomes } from './mode-outcomes';
import { areNeighbours } from './neighbours';
import { type SyndromeName, syndromes } from './syndromes';
import { stateResponse } from './unit-states';

const areaOfRole = new Map<string, string>();
for (const check of vocabulary.checks) if (!areaOfRole.has(check.targetRole)) areaOfRole.set(check.targetRole, check.area);

/** Chance that a reading is misread, by the instrument; the worst one used counts. */
const MISREAD: Record<Instrument, number> = {
  none: 0.025,
  multimeter: 0.018,
  'logic-probe': 0.05,
  oscilloscope: 0.035,
  'frequency-counter': 0.015,
  'high-voltage-probe': 0.04,
  'capacitor-tester': 0.055,
  magnifier: 0.06,
  thermometer: 0.08,
  'soldering-iron': 0.02,
  'bench-supply': 0.02,
  'test-media': 0.03,
};
/** Misreading grows with how awkward the access is. */
const STAGE_FACTOR = [0.8, 1, 1.35, 1.1, 1.2] as const;

/** P(misread) of a check: its worst instrument's times its stage's factor. */
export function misreadRate(check: Check): number {
  const worst = Math.max(
    ...(check.instruments.length > 0 ? check.instruments : (['none'] as const)).map((name) => MISREAD[name]),
  );
  return worst * STAGE_FACTOR[check.stage];
}

const hasOutcome = (check: Check, slug: string): boolean =>
  slug !== check.workingOutcome && check.outcomes.some((outcome) => outcome.slug === slug);

/** Outcomes a check of the faulty part itself tends to show, likeliest first: "cured" where it puts a good part in. */
function ownOutcomes(check: Check, cause: Cause): string[] {
  const swaps = ['cured', 'changed', 'better'].filter((slug) => hasOutcome(check, slug));
  if (swaps[0] === 'cured') return swaps;
  return (modeOutcomes[cause.mode] ?? []).filter((slug) => hasOutcome(check, slug)).slice(0, 2);
}

type Response = { shown: [string, number][] };

function writtenOrOwn(check: Check, cause: Cause, picture: SyndromeName): Response {
  const { state, plain } = syndromes[picture];
  const rule = crossRule(check.slug, { cause: cause.slug, role: cause.role, state });
  if (rule) return { shown: [[rule.outcome, rule.chance * (0.35 + 0.65 * plain)]] };
  const own =
    check.targetRole === cause.role && cause.role !== 'no-part' && !isBlind(check.slug, cause.role)
      ? ownOutcomes(check, cause)
      : [];
  const [first, second] = own;
  if (!first) return { shown: [] };
  const strength = (first === 'cured' ? 0.88 : 0.62 + 0.34 * detail(`own ${check.slug} ${cause.slug}`)) * (0.3 + 0.7 * plain);
  const share = second ? 0.72 + 0.26 * detail(`share ${check.slug} ${cause.slug}`) : 1;
  return {
    shown: second
      ? [
          [first, strength * share],
          [second, strength * (1 - share)],
        ]
      : [[first, strength]],
  };
}

/** Faults of neighbouring roles show weakly at powered checks; of the same area, weaker still. */
function nearby(check: Check, cause: Cause, picture: SyndromeName): Response {
  const signal = check.stage === 2 && !hasOutcome(check, 'cured');
  if (!signal || check.targetRole === cause.role || cause.role === 'no-part') return { shown: [] };
  const near = areNeighbours(check.targetRole, cause.role);
  const same = areaOfRole.get(cause.role) === check.area;
  if (!near && !same) return { shown: [] };
  const spread = detail(`near ${check.slug} ${cause.slug}`);
  const strength = (near ? 0.04 + 0.3 * spread * spread : 0.01 + 0.05 * spread) * syndromes[picture].plain;
  const bad = check.outcomes.map((outcome) => outcome.slug).filter((slug) => slug !== check.workingOutcome);
  const chosen = bad[Math.floor(detail(`which ${check.slug} ${cause.slug}`) * bad.length)]!;
  return { shown: [[chosen, strength]] };
}

/**
 * P(outcome | cause, fault picture) for a check, misreadings included, in the order of the check's outcomes.
 * A written rule or the part's own response comes first, then what the unit's state imposes, then
 * neighbours; what remains is the working outcome, but for a small rate of innocent oddities.
 */
export function checkResponse(check: Check, cause: Cause, picture: SyndromeName): Float64Array {
  const place = new Map(check.outcomes.map((outcome, i) => [outcome.slug, i]));
  const truth = new Float64Array(check.outcomes.length);
  let left = 1;
  const add = (shown: [string, number][]) => {
    const before = left;
    for (const [outcome, chance] of shown) {
      const i = place.get(outcome);
      if (i === undefined) throw new Error(`Check "${check.slug}" has no outcome "${outcome}".`);
      truth[i]! += before * chance;
      left -= before * chance;
    }
  };
  add(writtenOrOwn(check, cause, picture).shown);
  const imposed = stateResponse(check, syndromes[picture].state);
  add(imposed ? [[imposed.outcome, imposed.chance]] : nearby(check, cause, picture).shown);
  const others = check.outcomes.filter((outcome) => outcome.slug !== check.workingOutcome);
  const odd = 0.004 + 0.02 * detail(`odd ${check.slug}`);
  add(others.map(({ slug }): [string, number] => [slug, odd / others.length]));
  truth[place.get(check.workingOutcome)!]! += left;
  const misread = misreadRate(check);
  return truth.map((chance) => (1 - misread) * chance + (misread * (1 - chance)) / (check.outcomes.length - 1));
}
