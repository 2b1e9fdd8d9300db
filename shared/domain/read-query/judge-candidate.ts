import type { FixResult } from '../../schemas/case';
import type { Finding } from '../../schemas/finding';
import { outcomeOfOverload, outcomeOfReading } from '../readings/outcome-of-reading';
import { quantityOf } from '../readings/units';
import type { WrittenReading } from '../readings/parse-reading';
import type { Check } from '../../schemas/vocabulary';
import type { Modifier } from './mention';
import { classesOfOutcomes, type OutcomeClasses, outcomeOfState } from './outcome-of-state';
import type { Target } from './phrase';
import type { ReaderContext } from './reader-context';
import type { StateClass } from './state-words';

/** What a candidate would say with the states beside it; `fit` raises or lowers its score. Empty: it cannot be. */
export type Judgement = { findings: Finding[]; fit: number };

const CANNOT: Judgement = { findings: [], fit: 0 };
/** How far a state that names an outcome directly, a number, or a mere quality speaks for a candidate. */
const FIT = { direct: 0.5, number: 0.5, sure: 0.2, open: 0, far: -0.4 } as const;

type Said = { negated: boolean; affirmed?: boolean; states: readonly Modifier[] };

/** Judges one candidate of a mention. Needs at least one state or a negation for what cannot stand alone. */
export function judgeCandidate(target: Target, said: Said, context: ReaderContext): Judgement {
  if (target.kind === 'symptom') return judgeSymptom(target, said);
  if (target.kind === 'subject') return judgeSubject(target, said);
  if (target.kind === 'check') return judgeCheck(target.id, said, context);
  if (target.kind === 'told') return judgeTold(target, said, context);
  if (target.kind === 'role') return judgeRole(target.id, said, context);
  return CANNOT;
}

function judgeTold(target: Extract<Target, { kind: 'told' }>, said: Said, context: ReaderContext): Judgement {
  const denied = said.negated !== said.states.some((s) => s.negated);
  const value = denied ? context.checks.get(target.check)?.workingOutcome : target.outcome;
  return value === undefined ? CANNOT : { findings: [{ kind: 'check', id: target.check, value }], fit: FIT.sure };
}

function judgeSymptom(target: Extract<Target, { kind: 'symptom' }>, said: Said): Judgement {
  let turned = said.negated;
  for (const state of said.states) {
    if (state.reading !== null) return CANNOT;
    const classes = state.classes;
    const denies = classes.has('absent') || (target.value === 'absent' && classes.has('dead'));
    const affirms = classes.has('present') || classes.has('bad') || (classes.has('dead') && target.value === 'present');
    if (!denies && !affirms && !(target.value === 'absent' && classes.has('good'))) return CANNOT;
    if (denies !== state.negated) turned = !turned;
  }
  const value = (target.value === 'present') !== turned ? 'present' : 'absent';
  return { findings: [{ kind: 'symptom', id: target.id, value }], fit: said.states.length > 0 ? FIT.far : 0 };
}

function judgeSubject(target: Extract<Target, { kind: 'subject' }>, said: Said): Judgement {
  let lacking = said.negated ? true : said.affirmed ? false : null;
  for (const state of said.states) {
    const lack = lackOf(state.classes, target.lack);
    if (lack === null || state.reading !== null) return CANNOT;
    const now = lack !== state.negated;
    lacking = said.negated && !now ? true : now;
  }
  if (lacking === null || (lacking && target.lack === 'good')) return CANNOT;
  return { findings: [{ kind: 'symptom', id: target.id, value: lacking ? 'present' : 'absent' }], fit: FIT.sure };
}

function lackOf(classes: ReadonlySet<StateClass>, lack: 'absent' | 'dead' | 'good'): boolean | null {
  if (classes.has('good') || classes.has('present') || classes.has('steady') || (classes.has('pulsing') && lack !== 'dead'))
    return false;
  return classes.has('absent') || classes.has('dead') ? true : null;
}

function judgeCheck(id: string, said: Said, context: ReaderContext): Judgement {
  const check = context.checks.get(id);
  const classes = context.outcomeClasses.get(id);
  if (check === undefined || classes === undefined) return CANNOT;
  const read = said.states.find((s) => s.reading !== null && !s.outcomes.has(id));
  if (read?.reading) {
    const outcome = outcomeOfWritten(check, read.reading);
    return outcome === null ? CANNOT : { findings: [{ kind: 'check', id, value: outcome }], fit: FIT.number };
  }
  const direct = said.states.find((s) => s.outcomes.has(id));
  const all = new Set(said.states.flatMap((s) => [...s.classes]));
  const negated = said.negated !== said.states.some((s) => s.negated);
  if (direct !== undefined) {
    const named = direct.outcomes.get(id) as string;
    if (!negated) return { findings: [{ kind: 'check', id, value: named }], fit: FIT.direct };
    const turned = named === check.workingOutcome ? notWorking(classes, all) : { sure: true, outcomes: [check.workingOutcome] };
    return judged(id, turned, FIT.direct);
  }
  if (said.states.length > 0 && all.size === 0) return CANNOT;
  const trial = context.trials.get(id);
  if (trial !== undefined) return judgeTrial(id, trial, all, negated);
  if (said.states.length === 0 && !said.negated) return CANNOT;
  return judged(id, outcomeOfState(classes, all, negated), FIT.sure);
}

/** A trial that "works" cured the fault, one that is "dead" left it. */
function judgeTrial(
  id: string,
  trial: ReadonlyMap<FixResult, string>,
  classes: ReadonlySet<StateClass>,
  negated: boolean,
): Judgement {
  const fine = classes.has('good') || classes.has('present');
  const faulty = classes.has('dead') || classes.has('absent') || classes.has('bad');
  if (fine === faulty) return CANNOT;
  const value = trial.get(fine !== negated ? 'cured' : 'no-change');
  return value === undefined ? CANNOT : { findings: [{ kind: 'check', id, value }], fit: FIT.sure };
}

/** "Not released", "never high": the outcome of the opposite state, else the first that is not working, as entries list the usual fault first. */
function notWorking(outcomes: OutcomeClasses, classes: ReadonlySet<StateClass>): { sure: boolean; outcomes: string[] } {
  const turned = classes.size === 0 ? { sure: false, outcomes: [] } : outcomeOfState(outcomes, classes, true);
  const first = outcomes.find((o) => !o.working);
  return turned.outcomes.length > 0 || first === undefined ? turned : { sure: true, outcomes: [first.outcome] };
}

function judged(id: string, reading: { sure: boolean; outcomes: readonly string[] }, fit: number): Judgement {
  return { findings: reading.outcomes.map((value) => ({ kind: 'check', id, value })), fit: reading.sure ? fit : FIT.open };
}

/** The outcome that a written number means for a check; null where they do not go together. */
export function outcomeOfWritten(check: Check, reading: WrittenReading): string | null {
  if (reading.overload) return outcomeOfOverload(check) ?? overloadByName(check);
  if (reading.value === null) return null;
  if (reading.value === 0 && check.rule === null && reading.unit !== null)
    return outcomeOfState(classesOfOutcomes(check), new Set(['absent']), false).outcomes[0] ?? null;
  const ruled = outcomeOfReading(check, { ...reading, value: reading.value });
  if (ruled !== null) return ruled;
  if (check.rule !== null && reading.value > 0) {
    const mirrored = outcomeOfReading(check, { ...reading, value: -reading.value });
    if (mirrored !== null && check.rule.bands.every((b) => (b.max ?? 1) <= 0.5)) return mirrored;
  }
  const counts = reading.unit !== null && quantityOf(reading.unit) === 'frequency';
  const pulses = check.workingOutcome === 'pulsing' || check.workingOutcome === 'running';
  return check.rule === null && counts && pulses && reading.value > 0 ? check.workingOutcome : null;
}

/** Without a rule, OL still means the outcome that a check itself calls open. */
function overloadByName(check: Check): string | null {
  return check.outcomes.find((o) => o.slug === 'open')?.slug ?? null;
}

/** A part with a state ("processor hot"): the checks that look at this part and know that very state. */
function judgeRole(role: string, said: Said, context: ReaderContext): Judgement {
  const judgements = (context.checksOfRole.get(role) ?? [])
    .filter((id) => !context.trials.has(id))
    .map((id) => judgeCheck(id, said, context));
  const direct = judgements.filter((j) => j.fit >= FIT.direct);
  const findings = direct.flatMap((j) => j.findings);
  return { findings, fit: direct.length === 1 ? FIT.sure : FIT.far };
}

/** True where a state can be said of at least one candidate. */
export function accepts(candidates: readonly { target: Target }[], state: Modifier, context: ReaderContext): boolean {
  return candidates.some(
    ({ target }) => judgeCandidate(target, { negated: false, states: [state] }, context).findings.length > 0,
  );
}
