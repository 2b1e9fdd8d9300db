import type { Random } from '../../../seed/world';
import type { Check, Fix } from '../../../shared/schemas/vocabulary';
import type { BoardModel } from '../model/fault-model';
import type { Evidence } from '../posterior';

/** Who repairs: what they own, how patient and how bold they are. */
export type Repairer = {
  tools: ReadonlySet<string>;
  /** The checks that these tools allow. */
  options: Option[];
  maxChecks: number;
  maxFixes: number;
  /** Suspicion of one cause from which they reach for the iron. */
  boldness: number;
  /** How much of the evidence they take in: 1 all of it. */
  judgement: number;
  /** Their own leaning towards each cause, as a factor. */
  leaning: Float64Array;
};

const OWNED: Record<string, number> = {
  none: 1,
  multimeter: 1,
  magnifier: 0.9,
  'soldering-iron': 0.95,
  'logic-probe': 0.75,
  oscilloscope: 0.45,
  'capacitor-tester': 0.35,
  'frequency-counter': 0.15,
  thermometer: 0.4,
  'bench-supply': 0.3,
  'test-media': 0.45,
  'high-voltage-probe': 0.15,
  'working-unit': 0.35,
  donor: 0.9,
  'new-part': 1,
};

/** Sum of 12 uniforms less 6: roughly normal, standard deviation 1. */
const normal = (random: Random): number => {
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += random();
  return sum;
};

/** A repairer, drawn without regard to the unit. */
export function drawRepairer(random: Random, model: BoardModel): Repairer {
  const tools = new Set(Object.keys(OWNED).filter((tool) => random() < OWNED[tool]!));
  return {
    tools,
    options: optionsFor(model, tools),
    maxChecks: 7 + Math.floor(random() * 12),
    maxFixes: 4 + Math.floor(random() * 4),
    boldness: 0.42 + 0.45 * random(),
    judgement: 0.55 + 0.4 * random(),
    leaning: Float64Array.from(model.causes, () => Math.exp(0.5 * normal(random))),
  };
}

/** What the repairer suspects, from the findings so far: the posterior, taken in partly, with their leaning. Sums to 1. */
export function suspicion(repairer: Repairer, evidence: Evidence): Float64Array {
  const chances = evidence.causeChances().map((chance, i) => chance ** repairer.judgement * repairer.leaning[i]!);
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  return chances.map((chance) => chance / total);
}

/** A check with P(not the working outcome | cause), per cause of the board, and what doing it is felt to cost. */
type Option = { check: Check; response: Float64Array; cost: number };
const optionsOf = new WeakMap<BoardModel, Option[]>();

function optionOf(model: BoardModel, check: Check): Option {
  const working = model.checkTable(check.slug)[check.outcomes.findIndex(({ slug }) => slug === check.workingOutcome)]!;
  const odd = new Float64Array(model.causes.length);
  const share = new Float64Array(model.causes.length);
  for (const [c, cell] of model.cells.entries()) {
    odd[cell.causeIndex]! += cell.weight * (1 - working[c]!);
    share[cell.causeIndex]! += cell.weight;
  }
  return { check, response: odd.map((chance, i) => chance / share[i]!), cost: 0.4 * Math.log(check.minutes) + 0.3 * check.stage };
}

/** The board's checks that the tools allow; the board's own list is made once. */
function optionsFor(model: BoardModel, tools: ReadonlySet<string>): Option[] {
  const all = optionsOf.get(model) ?? model.checks.map((check) => optionOf(model, check));
  optionsOf.set(model, all);
  return all.filter(
    ({ check }) => check.instruments.every((tool) => tools.has(tool)) && check.needs.every((need) => tools.has(need)),
  );
}

const gumbel = (random: Random): number => -Math.log(-Math.log(random() + 1e-12) + 1e-12);

function best<T>(items: readonly T[], score: (item: T) => number): T | null {
  let top: T | null = null;
  let most = -Infinity;
  for (const item of items) {
    const value = score(item);
    if (value > most) [top, most] = [item, value];
  }
  return top;
}

/** The check that seems to tell the suspects apart most per minute, by feel and with chance; null where none is left. */
export function chooseCheck(
  random: Random,
  repairer: Repairer,
  about: { suspects: Float64Array; done: ReadonlySet<string> },
): Check | null {
  const open = repairer.options.filter(({ check }) => !about.done.has(check.slug));
  const chosen = best(open, ({ response, cost }) => {
    let mean = 0;
    let square = 0;
    for (let i = 0; i < response.length; i += 1) {
      const part = about.suspects[i]! * response[i]!;
      mean += part;
      square += part * response[i]!;
    }
    return Math.log(square - mean * mean + 0.003) - cost + 0.45 * gumbel(random);
  });
  return chosen?.check ?? null;
}

/** The fix that the suspicion speaks for, cheap ones first, with chance; null where none is left that addresses anything. */
export function chooseFix(
  random: Random,
  repairer: Repairer,
  model: BoardModel,
  about: { suspects: Float64Array; done: ReadonlySet<string> },
): Fix | null {
  const open = model.fixes.filter((fix) => !about.done.has(fix.slug) && fix.needs.every((need) => repairer.tools.has(need)));
  return best(open, (fix) => {
    let addressed = 1e-4;
    for (const i of model.addressed(fix.slug)) addressed += about.suspects[i]!;
    return Math.log(addressed) - 0.2 * Math.log(fix.minutes + 10) - 0.08 * fix.stage + 0.22 * gumbel(random);
  });
}
