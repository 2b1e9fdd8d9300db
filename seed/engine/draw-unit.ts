import { FIX_RESULTS, type FixResult } from '../../shared/schemas/case';
import { hashText, pickIndex, seededRandom } from '../random';
import type { Random, SimulatedUnit } from '../world';
import type { BoardModel, CheckModel, FixModel } from './board-model';

/** A unit with its hidden way of failing laid open, for whoever draws cases. */
export type DrawnUnit = SimulatedUnit & { readonly way: number };

/**
 * One unit of a board, its cause drawn from the prior. Every answer hangs on the unit's own seed and on the name of what
 * is asked, so the same question gets the same answer, in whatever order questions come.
 */
export function drawUnit(model: BoardModel, random: Random): DrawnUnit {
  const cause = pickIndex(random, model.prior);
  const shares = model.wayShare.map((share, way) => (model.wayCause[way] === cause ? share : 0));
  const way = pickIndex(random, shares);
  return unitWithWay(model, way, Math.floor(random() * 0x100000000));
}

/** The unit that fails in a given way; `seed` decides all its answers. */
export function unitWithWay(model: BoardModel, way: number, seed: number): DrawnUnit {
  const uniform = (question: string): number => {
    const random = seededRandom((seed ^ hashText(question)) >>> 0);
    random();
    return random();
  };
  return {
    board: model.board,
    cause: model.causes[model.wayCause[way] as number] as string,
    way,
    symptoms: observableSymptoms(model, (slug) => uniform(`symptom ${slug}`) < symptomChance(model, slug, way)),
    check: (slug) => {
      const check = model.checks.get(slug);
      if (!check) throw new Error(`Board ${model.board} has no check ${slug}.`);
      return outcomeAt(check, way, uniform(`check ${slug}`));
    },
    fix: (slug) => {
      const fix = model.fixes.get(slug);
      if (!fix) throw new Error(`Board ${model.board} has no fix ${slug}.`);
      return resultAt(fix, way, uniform(`part ${slug}`) < fix.badPart, uniform(`fix ${slug}`));
    },
  };
}

function symptomChance(model: BoardModel, slug: string, way: number): number {
  return model.symptoms.get(slug)?.present[way] ?? 0;
}

/** All symptoms that can be seen: one that a present and visible symptom hides is left out, neither present nor absent. */
function observableSymptoms(model: BoardModel, isThere: (slug: string) => boolean): SimulatedUnit['symptoms'] {
  const there = new Set([...model.symptoms.keys()].filter(isThere));
  const visible = new Map<string, boolean>();
  const canBeSeen = (slug: string): boolean => {
    const known = visible.get(slug);
    if (known !== undefined) return known;
    const hiders = model.symptoms.get(slug)?.hiddenBy ?? [];
    const seen = !hiders.some((hider) => there.has(hider) && canBeSeen(hider));
    visible.set(slug, seen);
    return seen;
  };
  return [...model.symptoms.keys()].filter(canBeSeen).map((symptom) => ({ symptom, present: there.has(symptom) }));
}

function outcomeAt(check: CheckModel, way: number, uniform: number): string {
  const size = check.outcomes.length;
  return check.outcomes[indexAt(check.table.subarray(way * size, way * size + size), uniform)] as string;
}

function resultAt(fix: FixModel, way: number, bad: boolean, uniform: number): FixResult {
  const size = FIX_RESULTS.length;
  const table = bad ? fix.bad : fix.good;
  return FIX_RESULTS[indexAt(table.subarray(way * size, way * size + size), uniform)] as FixResult;
}

function indexAt(weights: Float64Array, uniform: number): number {
  return pickIndex(() => uniform, weights);
}
