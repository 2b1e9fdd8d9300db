import { FIX_RESULTS } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import { type BoardModel, boardModel, knownCheck, knownFix } from './model/fault-model';

/**
 * The exact posterior. The latent state is a cell: a cause with one of its fault pictures. Given the cell
 * everything observable is independent, so P(findings, cause) is a sum over the cause's cells of
 * P(cell) x the product of what each finding contributes:
 *
 * - Symptom recorded: its chance, or one less its chance. A symptom can be observed only where no hider was
 *   seen, so each hider of a recorded symptom contributes as an absent symptom, once.
 * - Symptom recorded although a symptom recorded as present hides it, or one the category can't show: nothing.
 * - Symptom not recorded: summed out, which leaves a factor of one.
 * - Check: the chance of its outcome, misreadings included. That it was done contributes nothing; the same
 *   check again is the same answer, so a repeated finding counts once.
 * - Fix: the chance of its result given the cause (independent of the picture); good and bad donors and
 *   parts are summed out in it. The same fix again has the same result and counts once.
 */
export class Evidence {
  readonly weights: Float64Array;

  constructor(readonly model: BoardModel) {
    this.weights = model.cellWeights.slice();
  }

  /** Takes in recorded symptoms, all at once. */
  addSymptoms(recorded: ReadonlyMap<string, boolean>): this {
    const { order, cells } = this.model;
    const present = new Set<number>();
    const absent = new Set<number>();
    for (const [i, slug] of order.slugs.entries()) {
      const value = recorded.get(slug);
      if (value === undefined || order.hiders[i]!.some((hider) => present.has(hider))) continue;
      (value ? present : absent).add(i);
      for (const hider of order.hiders[i]!) absent.add(hider);
    }
    for (const [c, cell] of cells.entries()) {
      let factor = 1;
      for (const i of present) factor *= cell.symptoms[i]!;
      for (const i of absent) factor *= 1 - cell.symptoms[i]!;
      this.weights[c]! *= factor;
    }
    return this.rescaled();
  }

  addCheck(check: string, outcome: string): this {
    const place = knownCheck(check).outcomes.findIndex(({ slug }) => slug === outcome);
    if (place < 0) throw new Error(`Check "${check}" has no outcome "${outcome}".`);
    return this.times(this.model.checkTable(check)[place]!);
  }

  addFix(fix: string, result: (typeof FIX_RESULTS)[number]): this {
    knownFix(fix);
    return this.times(this.model.fixTable(fix)[FIX_RESULTS.indexOf(result)]!);
  }

  /** P(cause), in the order of the model's causes. */
  causeChances(): Float64Array {
    const chances = new Float64Array(this.model.causes.length);
    for (const [c, cell] of this.model.cells.entries()) chances[cell.causeIndex]! += this.weights[c]!;
    const total = chances.reduce((sum, chance) => sum + chance, 0);
    return chances.map((chance) => chance / total);
  }

  private times(chances: Float64Array): this {
    for (let c = 0; c < chances.length; c += 1) this.weights[c]! *= chances[c]!;
    return this.rescaled();
  }

  /** Keeps long products within range; only ratios matter. */
  private rescaled(): this {
    const top = Math.max(...this.weights);
    for (let c = 0; c < this.weights.length; c += 1) this.weights[c]! /= top;
    return this;
  }
}

/** Exact P(cause | findings, board); of contradicting findings on the same thing the last holds. */
export function truePosterior(board: string, findings: readonly Finding[]): Map<string, number> {
  const evidence = new Evidence(boardModel(board));
  const symptoms = new Map<string, boolean>();
  const done = new Map<string, Finding>();
  for (const finding of findings) {
    if (finding.kind === 'symptom') symptoms.set(finding.id, finding.value === 'present');
    else done.set(`${finding.kind} ${finding.id}`, finding);
  }
  evidence.addSymptoms(symptoms);
  for (const finding of done.values()) {
    if (finding.kind === 'check') evidence.addCheck(finding.id, finding.value);
    else if (finding.kind === 'fix') evidence.addFix(finding.id, finding.value);
  }
  const chances = evidence.causeChances();
  return new Map(evidence.model.causes.map((cause, i) => [cause, chances[i]!]));
}
