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
  const order = doneChecks(question);
  const done = new Set(order);
  const last = model.words.checks.get(order.at(-1) ?? '');
  const possible = possibleChecks(model, question);
  const offered: OfferedCheck[] = [];
  for (const { check, observable } of openChecks(model, question.read)) {
    const { table, weight } = model.estimator.outcomeTable(question.device, observable, question.findings);
    const candidate: CheckCandidate = {
      table,
      weight,
      values: check.outcomes.length,
      minutes: check.minutes,
      stage: check.stage,
      risk: check.risk,
      prerequisitesMet: check.prerequisites.every((slug) => done.has(slug) || !possible.has(slug)),
      possible: possible.has(check.slug) && check.stage <= bench.maxStage && hasAll(bench.needs, check.needs),
      instrumentsHeld: hasAll(bench.instruments, check.instruments),
      safetyFirst: isSafePowerUp(check),
      alreadySetUp: last !== undefined && isSetUp(check, last),
    };
    offered.push({ check, observable, candidate });
  }
  return offered;
}

/** The checks of the vocabulary that are not among the findings, and their observables. */
export function openChecks(model: CasebookModel, read: CodedQuestion['read']): { check: Check; observable: number }[] {
  const done = new Set(doneChecks({ read }));
  return model.coding.vocabulary.checks.flatMap((check) => {
    const observable = model.coding.observableOf('check', check.slug);
    return observable === undefined || check.retired || done.has(check.slug) ? [] : [{ check, observable }];
  });
}

/** Whether something was done with power on inside the case, so that safe power-up is behind us. */
export function poweredDone(model: CasebookModel, question: CodedQuestion): boolean {
  return doneChecks(question).some((slug) => (model.words.checks.get(slug)?.stage ?? 0) === 2);
}

/** Slugs of the checks among the findings, in order. */
export function doneChecks(question: Pick<CodedQuestion, 'read'>): string[] {
  return question.read.findings.filter((f) => f.kind === 'check').map((f) => f.id);
}

/** What can be checked on a device, by its slug; the empty one is any device. Kept: a model's words do not change. */
const possibleOf = new WeakMap<CasebookModel, Map<string, ReadonlySet<string>>>();

/** Slugs of the checks that make sense on the device asked about: of its category, and on a part that its board does not lack. */
export function possibleChecks(model: CasebookModel, question: CodedQuestion): ReadonlySet<string> {
  const devices = possibleOf.get(model) ?? new Map<string, ReadonlySet<string>>();
  possibleOf.set(model, devices);
  const slug = question.read.device?.slug ?? '';
  let possible = devices.get(slug);
  if (possible === undefined) {
    const place = model.words.devices.get(slug);
    const boards = place?.board ? [place.board] : (place?.model.boards ?? []);
    const lacking = boards.map(({ impossibleChecks }) => new Set(impossibleChecks));
    const makesSense = (check: Check) =>
      place === undefined || (check.categories.includes(place.model.category) && lacking.some((board) => !board.has(check.slug)));
    possible = new Set([...model.words.checks.values()].filter(makesSense).map((check) => check.slug));
    devices.set(slug, possible);
  }
  return possible;
}

function hasAll<T extends string>(held: readonly T[] | null, needed: readonly T[]): boolean {
  return held === null || needed.every((item) => item === 'none' || held.includes(item));
}

/** The same instrument on the same part as the check before. */
function isSetUp(check: Check, last: Check): boolean {
  return check.targetRole === last.targetRole && check.instruments.some((i) => i !== 'none' && last.instruments.includes(i));
}
