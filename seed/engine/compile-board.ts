import type { Board, DeviceModel } from '../../shared/schemas/device';
import type { Check, Vocabulary } from '../../shared/schemas/vocabulary';
import { hashText, normal, seededRandom } from '../random';
import type { BoardModel, CheckModel, FixModel, SymptomModel } from './board-model';
import type { FaultModel } from './fault-model';
import { fixModel } from './fix-model';
import { type Shown, whatIsShown } from './read-notation';

/** One way of failing, with all that it shows. */
export type Way = { readonly cause: string; readonly intermittent: boolean; readonly shown: Shown };

export type CompileInput = { model: FaultModel; vocabulary: Vocabulary; device: DeviceModel; board: Board };

/** P(an owner notes a symptom of a fault that comes and goes). */
const NOTED_WHILE_INTERMITTENT = 0.82;
/** P(a fault that comes and goes shows in a check), by access stage: a trial outside lasts longer, a crack can be seen. */
const CAUGHT_WHILE_INTERMITTENT = [0.85, 0.9, 0.62, 0.7, 0.7] as const;

/** Turns the written fault model into the numbers of one board. Throws where the text leaves out a cause or the board. */
export function compileBoard(input: CompileInput): BoardModel {
  const { model, vocabulary, device, board } = input;
  const rates = boardRates(input);
  const total = [...rates.values()].reduce((a, b) => a + b, 0);
  const causes = [...rates.keys()];
  const { ways, wayCause, wayShare } = listWays(input, causes);
  const noise = boardNoise(model, board.slug, causes);
  const category = device.category;

  const symptoms = new Map<string, SymptomModel>();
  const without = new Set(model.boards[board.slug]?.without);
  for (const { slug } of vocabulary.symptoms.filter((s) => s.categories.includes(category) && !without.has(s.slug))) {
    const leak = model.leaks[slug] ?? model.leaks.other;
    symptoms.set(slug, { present: symptomTable(slug, leak, { ways, noise }), hiddenBy: hidersOf(slug, vocabulary) });
  }
  const checks = new Map<string, CheckModel>();
  for (const check of checksOnBoard(input)) {
    const misread = model.misreadings[check.slug] ?? model.misreadings.other;
    const outcomes = check.outcomes.map((outcome) => outcome.slug);
    checks.set(check.slug, { outcomes, table: checkTable(check, misread, { ways, noise }) });
  }
  const fixes = new Map<string, FixModel>();
  for (const fix of vocabulary.fixes.filter((f) => f.categories.includes(category) && f.addresses.some((c) => rates.has(c)))) {
    fixes.set(fix.slug, fixModel(fix, model.fixes[fix.slug] ?? {}, ways));
  }
  const prior = Float64Array.from(causes, (cause) => (rates.get(cause) as number) / total);
  return { board: board.slug, causes, prior, wayCause, wayShare, symptoms, checks, fixes };
}

/** Cause to rate on this board: causes of the category whose part the board has or that lie outside, factors applied. */
function boardRates({ model, vocabulary, device, board }: CompileInput): Map<string, number> {
  const described = model.boards[board.slug];
  if (!described) throw new Error(`The fault model says nothing about board ${board.slug}.`);
  const outside = new Set(vocabulary.roles.filter((role) => role.outside).map((role) => role.slug));
  const onBoard = new Set(board.parts.map((part) => part.role));
  const rates = new Map<string, number>();
  for (const cause of vocabulary.causes) {
    const description = model.causes[cause.slug];
    if (!description) throw new Error(`The fault model says nothing about cause ${cause.slug}.`);
    const possible = cause.categories.includes(device.category) && (outside.has(cause.role) || onBoard.has(cause.role));
    const rate = description.rate * (described.factors[cause.slug] ?? 1);
    if (possible && rate > 0) rates.set(cause.slug, rate);
  }
  return rates;
}

function checksOnBoard({ vocabulary, device, board }: CompileInput): Check[] {
  return vocabulary.checks.filter(
    (check) => check.categories.includes(device.category) && !board.impossibleChecks.includes(check.slug),
  );
}

/** Every way of failing of the listed causes, the steady and the intermittent form apart. */
function listWays({ model, vocabulary, device: { category } }: CompileInput, causes: readonly string[]) {
  const outside = new Set(vocabulary.roles.filter((role) => role.outside).map((role) => role.slug));
  const roleOf = new Map(vocabulary.causes.map((cause) => [cause.slug, cause.role]));
  const ways: Way[] = [];
  const wayCause: number[] = [];
  const wayShare: number[] = [];
  causes.forEach((cause, index) => {
    const description = model.causes[cause] as FaultModel['causes'][string];
    const total = description.ways.reduce((sum, [share]) => sum + share, 0);
    const inside = outside.has(roleOf.get(cause) as string) ? '' : model.inside;
    for (const [share, shows] of description.ways) {
      for (const intermittent of [false, true]) {
        const part = intermittent ? description.intermittent : 1 - description.intermittent;
        if (part === 0) continue;
        const here = model.states[`${cause} in ${category}`] ?? '';
        const texts = [here, shows, description.always, intermittent ? 'comes-and-goes' : '', inside];
        ways.push({ cause, intermittent, shown: whatIsShown(texts, model.states, category) });
        wayCause.push(index);
        wayShare.push((share / total) * part);
      }
    }
  });
  return { ways, wayCause: Int32Array.from(wayCause), wayShare: Float64Array.from(wayShare) };
}

/** Shift in log odds per cause, for one observable. */
type Noise = (observable: string) => Map<string, number>;
type Context = { readonly ways: readonly Way[]; readonly noise: Noise };

/** By how much a board differs from its kind, per observable and per observable and cause: fixed by name, not by chance. */
function boardNoise(model: FaultModel, board: string, causes: readonly string[]): Noise {
  const draw = (name: string): number => normal(seededRandom(hashText(`${model.name} ${name}`)));
  const { observable: overall, cause: single } = model.differences;
  return (observable) => {
    const shared = overall * draw(`${board} ${observable}`);
    return new Map(causes.map((cause) => [cause, shared + single * draw(`${board} ${observable} ${cause}`)]));
  };
}

function shiftedOdds(p: number, shift: number): number {
  if (p <= 0 || p >= 1) return p;
  const odds = (p / (1 - p)) * Math.exp(shift);
  return odds / (1 + odds);
}

function symptomTable(slug: string, leak: number, { ways, noise }: Context): Float64Array {
  const shifts = noise(slug);
  return Float64Array.from(ways, (way) => {
    const shown = (way.shown.symptoms.get(slug) ?? 0) * (way.intermittent ? NOTED_WHILE_INTERMITTENT : 1);
    return shiftedOdds(1 - (1 - shown) * (1 - leak), shifts.get(way.cause) as number);
  });
}

function checkTable(check: Check, misread: number, { ways, noise }: Context): Float64Array {
  const size = check.outcomes.length;
  const working = check.outcomes.findIndex((outcome) => outcome.slug === check.workingOutcome);
  const table = new Float64Array(ways.length * size);
  const shifts = noise(check.slug);
  ways.forEach((way, index) => {
    const shift = Math.exp(shifts.get(way.cause) as number);
    const read = trueOutcomes(check, way).map((p) => p * (1 - misread) + (misread * (1 - p)) / (size - 1));
    const shifted = read.map((p, outcome) => (outcome === working ? p : p * shift));
    const total = shifted.reduce((a, b) => a + b, 0);
    table.set(
      shifted.map((p) => p / total),
      index * size,
    );
  });
  return table;
}

/** P(outcome) for a reader who makes no mistake; what the written outcomes leave of 1 is the working one. */
function trueOutcomes(check: Check, way: Way): number[] {
  const slugs = check.outcomes.map((outcome) => outcome.slug);
  const row = slugs.map(() => 0);
  const caught = way.intermittent ? CAUGHT_WHILE_INTERMITTENT[check.stage] : 1;
  for (const [outcome, p] of way.shown.checks.get(check.slug) ?? []) {
    const at = slugs.indexOf(outcome);
    if (at < 0) throw new Error(`Check ${check.slug} has no outcome ${outcome}.`);
    if (outcome !== check.workingOutcome) row[at] = p * caught;
  }
  const left = 1 - row.reduce((a, b) => a + b, 0);
  if (left < 0) throw new Error(`The outcomes of check ${check.slug} sum to more than 1 for ${way.cause}.`);
  row[slugs.indexOf(check.workingOutcome)] = left;
  return row;
}

/** What hides a symptom, directly or through another hider. Throws where a symptom would hide itself. */
function hidersOf(slug: string, vocabulary: Vocabulary): string[] {
  const direct = new Map(vocabulary.symptoms.map((symptom) => [symptom.slug, symptom.hiddenBy]));
  const all = new Set<string>();
  const open = [...(direct.get(slug) ?? [])];
  while (open.length > 0) {
    const hider = open.pop() as string;
    if (hider === slug) throw new Error(`Symptom ${slug} would hide itself.`);
    if (all.has(hider)) continue;
    all.add(hider);
    open.push(...(direct.get(hider) ?? []));
  }
  return [...all];
}
