import type { CaseContent, Reading } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import { drawUnit } from '../engine/draw-unit';
import type { FaultWorld } from '../engine/fault-world';
import { pickWeighted, seededRandom, shuffled } from '../random';
import { faultyReading, readableParts, workingReading } from '../working-pins';
import type { Random, SimulatedUnit } from '../world';
import type { Bench } from './choose-step';
import { drawDesignator } from './designators';
import { drawMonth } from './draw-month';
import { investigate } from './investigate';
import { drawRepairer, type Repairer } from './repairer';
import { createExperience } from './suspicion';
import { symptomList } from './symptom-list';
import { withSecondFault } from './two-faults';
import { afterRepair, namedCause, outcomeOf, proofOf, type WriteUp, writtenSteps } from './write-up';

/** A drawn case before its story is told, and what really was wrong. */
export type DrawnCase = {
  readonly content: CaseContent;
  readonly board: string;
  readonly trueCause: string;
  readonly repairer: Repairer;
};

/** P(two faults at once), and P(the contributor names the model only). */
const TWO_FAULTS = 0.018;
const MODEL_ONLY = 0.05;
/** P(a case that was not solved is posted at all): cases are volunteered, and success is told more readily. */
const POSTED_UNSOLVED = 0.5;

/** `count` cases, boards by popularity; the same seed gives the same cases. Narratives are left empty. */
export function drawPlainCases(world: FaultWorld, seed: number, count: number): DrawnCase[] {
  const benches = new Map<string, Bench>();
  const boards = world.boards.map((slug) => [slug, world.model.boards[slug]?.popularity ?? 0] as const);
  return Array.from({ length: count }, (_, index) => {
    const random = seededRandom(`case ${seed} ${index}`);
    const slug = pickWeighted(random, boards);
    const bench = benches.get(slug) ?? createBench(world, slug);
    benches.set(slug, bench);
    for (;;) {
      const drawn = drawCase(world, bench, slug, random);
      if (['resolved', 'partly-resolved'].includes(drawn.content.outcome) || random() < POSTED_UNSOLVED) return drawn;
    }
  });
}

function createBench(world: FaultWorld, slug: string): Bench {
  const numbers = world.numbers(slug);
  return {
    experience: createExperience(numbers),
    checks: new Map(
      world.vocabulary.checks.filter((check) => numbers.checks.has(check.slug)).map((check) => [check.slug, check]),
    ),
    fixes: world.vocabulary.fixes.filter((fix) => numbers.fixes.has(fix.slug)),
  };
}

function drawCase(world: FaultWorld, bench: Bench, slug: string, random: Random): DrawnCase {
  const { board, device } = world.place(slug);
  const { unit, second } = faultyUnit(world, slug, random);
  const repairer = drawRepairer(random);
  const list = symptomList(random, unit);
  const seen = list.symptoms.map(
    ({ symptom, present }): Finding => ({ kind: 'symptom', id: symptom, value: present ? 'present' : 'absent' }),
  );
  const investigation = investigate({ random, unit, repairer, bench }, seen);
  const work: WriteUp = { random, unit, repairer, bench, board, vocabulary: world.vocabulary, investigation };
  const causes = [
    namedCause(work),
    second && investigation.end === 'cured' ? world.vocabulary.causes.find((c) => c.slug === second.cause) : null,
  ]
    .filter((cause) => cause !== null && cause !== undefined)
    .filter((cause, index, all) => all.findIndex((other) => other.slug === cause.slug) === index);
  const [main] = causes;
  const guilty = main ? drawDesignator(random, board, main.role) : null;
  const proved = main ? proofOf(work, main) : { proof: null, provedByStep: null };
  const content: CaseContent = {
    device: random() < MODEL_ONLY ? device.slug : board.slug,
    month: drawMonth(random),
    ...list,
    steps: writtenSteps(work, guilty),
    readings: caseReadings(work, guilty),
    causes: causes.map((cause, index) => ({
      cause: cause.slug,
      designators: index === 0 && guilty !== null && random() < 0.35 + 0.55 * repairer.notes ? [guilty] : [],
    })),
    ...proved,
    outcome: outcomeOf(work),
    ...afterRepair(work),
    narrative: '',
  };
  return { content, board: slug, trueCause: unit.cause, repairer };
}

/** A unit that shows at least one symptom: nobody brings another to the bench. */
function faultyUnit(world: FaultWorld, slug: string, random: Random): { unit: SimulatedUnit; second: SimulatedUnit | null } {
  const numbers = world.numbers(slug);
  for (;;) {
    const unit = drawUnit(numbers, random);
    if (!unit.symptoms.some((each) => each.present)) continue;
    const second = random() < TWO_FAULTS ? drawUnit(numbers, random) : null;
    const both = second ? withSecondFault(unit, second, world.vocabulary) : null;
    return both ? { unit: both, second } : { unit, second: null };
  }
}

/** A few pins of a chip or two, where somebody took notes and the unit had power. */
function caseReadings({ random, repairer, board, investigation }: WriteUp, guilty: string | null): Reading[] {
  const powered = investigation.steps.some(
    (step) => step.kind === 'check' && step.check === 'rail-5v' && step.outcome === 'in-tolerance',
  );
  if (!powered || random() > 0.45 * repairer.notes) return [];
  const readable = readableParts(board.parts);
  const suspects = readable.filter((part) => part.designator === guilty);
  const parts = [...suspects, ...shuffled(random, readable).slice(0, 1)].slice(0, 2);
  return parts.flatMap((part) =>
    shuffled(
      random,
      Array.from({ length: part.pins }, (_, index) => index + 1),
    )
      .slice(0, 2 + Math.floor(5 * random()))
      .sort((a, b) => a - b)
      .map((pin) => (part.designator === guilty ? faultyReading : workingReading)(random, board.slug, part, pin)),
  );
}
