import { vocabulary } from '../../../seed/vocabulary';
import type { Random } from '../../../seed/world';
import type { CaseContent, Proof } from '../../../shared/schemas/case';
import type { DrawnUnit } from '../draw-unit';
import { knownCheck, knownFix } from '../model/fault-model';
import { caseReadings } from '../readings';
import type { Repair } from './repair';

const labelOf = new Map([...vocabulary.symptoms, ...vocabulary.fixes].map((entry) => [entry.slug, entry.label.toLowerCase()]));
const roleOf = new Map(vocabulary.causes.map((cause) => [cause.slug, cause.role]));

/** First of the 96 months that cases come from. */
const FIRST_YEAR = 2018;
const MONTHS = 96;

const monthOf = (random: Random): string => {
  const month = Math.floor(Math.max(random(), random() * 0.9) * MONTHS);
  return `${FIRST_YEAR + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`;
};

/** What the repairer takes the cause to have been: of what the cure addresses, the most suspected. */
function believedCause(repair: Repair): string | null {
  const addressed = new Set(repair.cured.flatMap((fix) => fix.addresses));
  let found: string | null = null;
  let most = -1;
  for (const [i, cause] of repair.model.causes.entries()) {
    if (repair.ending === 'cured' && !addressed.has(cause)) continue;
    if (repair.suspects[i]! > most) [found, most] = [cause, repair.suspects[i]!];
  }
  return found;
}

type Proved = { proof: Proof; provedByStep: number | null };

/** How the cause was proved: by a check of the part itself where there was one, else by the repair. */
function proofOf(random: Random, repair: Repair, cause: string): Proved {
  const role = roleOf.get(cause);
  const spoke = repair.steps.flatMap((step, place) => {
    if (step.kind !== 'check') return [];
    const check = knownCheck(step.check);
    return check.targetRole === role && step.outcome !== check.workingOutcome ? [{ place, swap: step.outcome === 'cured' }] : [];
  });
  const swap = spoke.findLast((entry) => entry.swap);
  if (swap && random() < 0.9) return { proof: 'substitution', provedByStep: swap.place };
  const measured = spoke.findLast((entry) => !entry.swap);
  if (measured && random() < 0.7) return { proof: 'measurement', provedByStep: measured.place };
  const replaced = repair.cured.some((fix) => fix.action === 'replace' || fix.action === 'swap-outside');
  const u = random();
  if (replaced && u < 0.35) return { proof: 'substitution', provedByStep: null };
  return { proof: u < 0.83 ? 'repair-held' : 'suspected', provedByStep: null };
}

type Verdict = Pick<CaseContent, 'causes' | 'proof' | 'provedByStep' | 'outcome' | 'afterRepairChecks' | 'soakMinutes'>;

function verdict(random: Random, repair: Repair): Verdict {
  const open: Verdict = {
    causes: [],
    proof: null,
    provedByStep: null,
    outcome: 'unresolved',
    afterRepairChecks: [],
    soakMinutes: null,
  };
  const suspected = (cause: string): Verdict => ({ ...open, causes: [{ cause, designators: [] }], proof: 'suspected' });
  const cause = believedCause(repair)!;
  if (repair.ending === 'nothing-found') return { ...suspected('no-fault-found'), outcome: 'resolved', soakMinutes: 60 };
  if (repair.ending === 'given-up')
    return { ...(random() < 0.3 ? suspected(cause) : open), outcome: random() < 0.35 ? 'not-economical' : 'unresolved' };
  if (repair.ending === 'partly') return { ...suspected(cause), outcome: 'partly-resolved' };
  const again = repair.steps.flatMap((step) =>
    step.kind === 'check' && step.outcome !== knownCheck(step.check).workingOutcome ? [step.check] : [],
  );
  const part = repair.model.partsOf(roleOf.get(cause)!)[0];
  return {
    causes: [{ cause, designators: part ? [part.designator] : [] }],
    ...proofOf(random, repair, cause),
    outcome: 'resolved',
    afterRepairChecks: [...new Set(again)].slice(0, 3),
    soakMinutes: random() < 0.6 ? 15 * (1 + Math.floor(random() * 16)) : null,
  };
}

function narrativeOf(repair: Repair): string {
  const first = repair.noted.symptoms.find((seen) => seen.present);
  const fix = repair.steps.findLast((step) => step.kind === 'fix');
  const came = first ? `Came in with ${labelOf.get(first.symptom)}.` : 'Came in without a fault that could be named.';
  if (fix?.kind !== 'fix') return `${came} Nothing was replaced.`;
  const done = fix.fixes.map((entry) => labelOf.get(knownFix(entry.fix).slug)).join(' and ');
  return `${came} Last thing done: ${done}; ${fix.result === 'cured' ? 'that cured it' : 'that was not the end of it'}.`;
}

/** The case as it is posted. It says what the repairer believes, which is not always what was wrong. */
export function writeUp(random: Random, unit: DrawnUnit, repair: Repair): CaseContent {
  return {
    device: random() < 0.07 ? repair.model.model : unit.board,
    month: monthOf(random),
    ...repair.noted,
    steps: repair.steps,
    readings: random() < 0.25 ? caseReadings(random, unit) : [],
    ...verdict(random, repair),
    narrative: narrativeOf(repair),
  };
}
