import type { Instrument, Need, Stage } from '../../schemas/terms';
import type { Check } from '../../schemas/vocabulary';
import type { CheckCandidate } from '../../stats/decide/next-check';
import type { CasebookModel } from '../casebook/casebook-model';
import type { CodedQuestion } from './read-question';
import { isSafePowerUp } from './safe-power-up';

/** What the user has and can do; null means everything. */
export type Bench = { instruments: readonly Instrument[] | null; needs: readonly Need[] | null; maxStage: Stage };

export const WHOLE_BENCH: Bench = { instruments: null, needs: null, maxStage: 4 };

export type OfferedCheck = { check: Check; observable: number; candidate: CheckCandidate };

/** Every check that was not done yet, with its outcome table on this device and what stands in its way. */
export function checkCandidates(model: CasebookModel, question: CodedQuestion, bench: Bench = WHOLE_BENCH): OfferedCheck[] {
  const done = doneChecks(question);
  const last = model.words.checks.get(done.at(-1) ?? '');
  return model.coding.vocabulary.checks.flatMap((check) => {
    const observable = model.coding.observableOf('check', check.slug);
    if (observable === undefined || check.retired || done.includes(check.slug)) return [];
    const { table, weight } = model.estimator.outcomeTable(question.device, observable, question.findings);
    const candidate: CheckCandidate = {
      table,
      weight,
      values: check.outcomes.length,
      minutes: check.minutes,
      stage: check.stage,
      risk: check.risk,
      prerequisitesMet: check.prerequisites.every((slug) => done.includes(slug) || !isPossible(model, question, slug)),
      possible: isPossible(model, question, check.slug) && check.stage <= bench.maxStage && hasAll(bench.needs, check.needs),
      instrumentsHeld: hasAll(bench.instruments, check.instruments),
      safetyFirst: isSafePowerUp(check),
      alreadySetUp: last !== undefined && isSetUp(check, last),
    };
    return [{ check, observable, candidate }];
  });
}

/** Whether something was done with power on inside the case, so that safe power-up is behind us. */
export function poweredDone(model: CasebookModel, question: CodedQuestion): boolean {
  return doneChecks(question).some((slug) => (model.words.checks.get(slug)?.stage ?? 0) === 2);
}

/** Slugs of the checks among the findings, in order. */
export function doneChecks(question: CodedQuestion): string[] {
  return question.read.findings.filter((f) => f.kind === 'check').map((f) => f.id);
}

/** Whether a check makes sense on the device asked about: its category, and no such part missing from the board. */
export function isPossible(model: CasebookModel, question: CodedQuestion, slug: string): boolean {
  const check = model.words.checks.get(slug);
  const place = model.words.devices.get(question.read.device?.slug ?? '');
  if (!check) return false;
  if (!place) return true;
  const boards = place.board ? [place.board] : place.model.boards;
  return check.categories.includes(place.model.category) && boards.some((board) => !board.impossibleChecks.includes(slug));
}

function hasAll<T extends string>(held: readonly T[] | null, needed: readonly T[]): boolean {
  return held === null || needed.every((item) => item === 'none' || held.includes(item));
}

/** The same instrument on the same part as the check before. */
function isSetUp(check: Check, last: Check): boolean {
  return check.targetRole === last.targetRole && check.instruments.some((i) => i !== 'none' && last.instruments.includes(i));
}
