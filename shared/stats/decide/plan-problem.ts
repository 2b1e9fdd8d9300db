import { assertCheckTable, type CheckTable } from './check-model';

/** A fix: what it costs, and how likely it cures under each cause. */
export type PlanFix = {
  /** Chance to cure under each cause, 0 to 1; the unlisted cause last, which a fix does not address (0). */
  readonly cure: Float64Array;
  readonly minutes: number;
  /** Money spent whether or not it cures; same unit as the hour's value. */
  readonly partCost: number;
  /** 0 outside the case to 4 solder, hard to undo. */
  readonly stage: number;
};

/** A check: what it costs, and what it says about the causes. */
export type PlanCheck = CheckTable & {
  readonly minutes: number;
  readonly partCost?: number;
  readonly stage: number;
  /** Indices of checks that have to be done first. */
  readonly prerequisites?: readonly number[];
};

export type PlanProblem = {
  /** Beliefs, one per cause, the unlisted cause last; sums to 1. */
  readonly posterior: Float64Array;
  readonly fixes: readonly PlanFix[];
  readonly checks: readonly PlanCheck[];
  /** Fixes tried without success and checks done, as indices; the posterior knows their results already. */
  readonly triedFixes?: readonly number[];
  readonly doneChecks?: readonly number[];
  /** What an hour of work is worth. */
  readonly hourValue: number;
  /** What it costs to stop, or to hand the unit over. */
  readonly handOverCost: number;
  /** Nothing above this stage enters the plan. Default 4. */
  readonly maxStage?: number;
  /** Steps struck out by the user, as indices. */
  readonly struckFixes?: readonly number[];
  readonly struckChecks?: readonly number[];
  /** Checks that come first whatever they tell, in this order: safe power-up. */
  readonly firstChecks?: readonly number[];
  /** The step that the plan has to begin with, whatever would cost less; passed over where it is struck or out of reach. */
  readonly start?: StepRef;
  /** How many situations the search may weigh; more finds cheaper plans. */
  readonly effort?: number;
};

type Costs = { readonly index: number; readonly minutes: number; readonly partCost: number; readonly cost: number };

/** A fix with the causes it can cure listed out. */
export type ReadyFix = Costs & { readonly causes: Int32Array; readonly cure: Float64Array };

/** A check with its likelihoods raised to its weight, and what ranks it quickly. */
export type ReadyCheck = Costs & {
  readonly values: number;
  readonly table: Float64Array;
  readonly powered: Float64Array;
  /** Sum over outcomes of P ln P for each cause. */
  readonly rowInformation: Float64Array;
  /** Positions, in the ready checks, that have to be done first. */
  readonly prerequisites: readonly number[];
};

/** A check or a fix, by its index in the problem. */
export type StepRef = { readonly kind: 'check' | 'fix'; readonly index: number };

export type ReadyProblem = {
  readonly posterior: Float64Array;
  readonly fixes: readonly ReadyFix[];
  readonly checks: readonly ReadyCheck[];
  /** For each cause, the positions of the fixes that can cure it, and how likely. */
  readonly fixesOf: readonly { readonly fixes: Int32Array; readonly cure: Float64Array }[];
  readonly handOverCost: number;
  /** Positions, in the ready checks, that come first. */
  readonly first: readonly number[];
  /** The step to begin with, by its position. */
  readonly start: { readonly kind: StepRef['kind']; readonly position: number } | null;
};

/**
 * Checks a problem's shapes and numbers and brings it into the form the search works on: struck steps, stages out of
 * reach, fixes that cure nothing and checks whose prerequisites cannot be met are gone. Throws a RangeError that says
 * what is wrong.
 */
export function readyProblem(problem: PlanProblem): ReadyProblem {
  const { posterior, fixes, checks, handOverCost, maxStage = 4 } = problem;
  assertMoney('hour value', problem.hourValue);
  assertMoney('hand-over cost', handOverCost);
  assertBeliefs(posterior);
  const gone = new Set([...(problem.struckFixes ?? []), ...(problem.triedFixes ?? [])]);
  const readyFixes = fixes.flatMap((fix, index) => {
    assertCure(fix, posterior.length);
    const ready = readyFix(fix, { index, ...costsOf(fix, problem.hourValue) });
    return gone.has(index) || fix.stage > maxStage || ready.causes.length === 0 ? [] : [ready];
  });
  for (const check of checks) assertCheckTable(check, posterior.length);
  const kept = reachableChecks(problem, maxStage);
  const place = new Map(kept.map((index, position) => [index, position]));
  const readyChecks = kept.map((index) =>
    readyCheck(checks[index]!, { index, ...costsOf(checks[index]!, problem.hourValue) }, place),
  );
  const first = (problem.firstChecks ?? []).flatMap((index) => place.get(index) ?? []);
  return {
    posterior,
    fixes: readyFixes,
    checks: readyChecks,
    fixesOf: byCause(readyFixes, posterior.length),
    handOverCost,
    first,
    start: startOf(problem.start, { fix: readyFixes, check: readyChecks }),
  };
}

function startOf(start: StepRef | undefined, ready: Record<StepRef['kind'], readonly Costs[]>): ReadyProblem['start'] {
  const position = start === undefined ? -1 : ready[start.kind].findIndex(({ index }) => index === start.index);
  return start === undefined || position < 0 ? null : { kind: start.kind, position };
}

function costsOf(step: { minutes: number; partCost?: number }, hourValue: number): Omit<Costs, 'index'> {
  const { minutes, partCost = 0 } = step;
  assertMoney('part cost', partCost);
  if (!(minutes >= 0) || !Number.isFinite(minutes)) throw new RangeError(`Minutes must be at least 0, not ${minutes}.`);
  return { minutes, partCost, cost: stepCost(step, hourValue) };
}

/** What a step costs: its minutes at what an hour is worth, and its parts, in the unit of the hour's value. */
export function stepCost({ minutes, partCost = 0 }: { readonly minutes: number; readonly partCost?: number }, hourValue: number): number {
  return (minutes * hourValue) / 60 + partCost;
}

/** Checks not struck, not done, within the stage, all of whose prerequisites are done or among them. */
function reachableChecks(problem: PlanProblem, maxStage: number): number[] {
  const { checks, doneChecks = [] } = problem;
  const gone = new Set([...(problem.struckChecks ?? []), ...doneChecks]);
  let kept = checks.map((_, index) => index).filter((index) => !gone.has(index) && checks[index]!.stage <= maxStage);
  for (let before = Infinity; kept.length < before; ) {
    before = kept.length;
    const have = new Set([...kept, ...doneChecks]);
    kept = kept.filter((index) => (checks[index]!.prerequisites ?? []).every((needed) => have.has(needed)));
  }
  return kept;
}

function readyFix(fix: PlanFix, costs: Costs): ReadyFix {
  const causes = [...fix.cure.keys()].filter((cause) => fix.cure[cause]! > 0);
  return { ...costs, causes: Int32Array.from(causes), cure: Float64Array.from(causes, (cause) => fix.cure[cause]!) };
}

function readyCheck(check: PlanCheck, costs: Costs, place: ReadonlyMap<number, number>): ReadyCheck {
  const { table, values } = check;
  const prerequisites = (check.prerequisites ?? []).flatMap((index) => place.get(index) ?? []);
  return {
    ...costs,
    values,
    table,
    ...workedTable(check),
    prerequisites,
  };
}

type WorkedTable = { readonly values: number; readonly weight: number } & Pick<ReadyCheck, 'powered' | 'rowInformation'>;

/** Tables are worked out once: plans are made from the same ones again and again, as a repair goes on. */
const worked = new WeakMap<Float64Array, WorkedTable>();

function workedTable({ table, values, weight }: CheckTable): Pick<ReadyCheck, 'powered' | 'rowInformation'> {
  let found = worked.get(table);
  if (found === undefined || found.values !== values || found.weight !== weight) {
    const rowInformation = new Float64Array(table.length / values);
    table.forEach((chance, cell) => {
      if (chance > 0) rowInformation[Math.floor(cell / values)]! += chance * Math.log(chance);
    });
    found = { values, weight, rowInformation, powered: weight === 1 ? table : table.map((chance) => chance ** weight) };
    worked.set(table, found);
  }
  return { powered: found.powered, rowInformation: found.rowInformation };
}

function byCause(fixes: readonly ReadyFix[], causes: number): ReadyProblem['fixesOf'] {
  const lists = Array.from({ length: causes }, () => ({ fixes: [] as number[], cure: [] as number[] }));
  fixes.forEach((fix, position) => {
    fix.causes.forEach((cause, entry) => {
      lists[cause]!.fixes.push(position);
      lists[cause]!.cure.push(fix.cure[entry]!);
    });
  });
  return lists.map((list) => ({ fixes: Int32Array.from(list.fixes), cure: Float64Array.from(list.cure) }));
}

function assertBeliefs(posterior: Float64Array): void {
  const sum = posterior.reduce((total, belief) => total + belief, 0);
  if (!(Math.abs(sum - 1) < 1e-6)) throw new RangeError(`Beliefs must sum to 1, not ${sum}.`);
  if (posterior.some((belief) => belief < 0)) throw new RangeError('Beliefs must not be negative.');
}

function assertCure(fix: PlanFix, causes: number): void {
  if (fix.cure.length !== causes) throw new RangeError(`A fix needs ${causes} chances to cure, not ${fix.cure.length}.`);
  if (!fix.cure.every((chance) => chance >= 0 && chance <= 1)) throw new RangeError('Chances to cure must lie between 0 and 1.');
}

function assertMoney(name: string, amount: number): void {
  if (!(amount >= 0) || !Number.isFinite(amount))
    throw new RangeError(`The ${name} must be a finite number of at least 0, not ${amount}.`);
}
