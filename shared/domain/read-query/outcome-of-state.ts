import type { Check } from '../../schemas/vocabulary';
import { isNegator, phraseWords } from './phrase-terms';
import { oppositeClasses, STATE_PHRASES, stateClassesOf, type StateClass } from './state-words';

/** A check's outcomes with the state classes that their own words name. */
export type OutcomeClasses = { outcome: string; working: boolean; classes: ReadonlySet<StateClass> }[];

/** The answer to "which outcome does this state mean": one, several that fit equally, or none. */
export type StateReading = { sure: boolean; outcomes: string[] };

const NONE: StateReading = { sure: false, outcomes: [] };
/** Words that speak of quality rather than of a level; an outcome rarely has them in its own name. */
export const GENERAL_CLASSES: ReadonlySet<StateClass> = new Set<StateClass>(['good', 'present', 'absent', 'dead', 'bad']);

/** Reads the classes of every outcome from its slug, label and synonyms. */
export function classesOfOutcomes(check: Pick<Check, 'outcomes' | 'workingOutcome'>): OutcomeClasses {
  return check.outcomes.map((o) => ({
    outcome: o.slug,
    working: o.slug === check.workingOutcome,
    classes: classesOfPhrases([o.slug.replaceAll('-', ' '), o.label, ...o.synonyms]),
  }));
}

function classesOfPhrases(phrases: readonly string[]): Set<StateClass> {
  const classes = new Set<StateClass>();
  for (const phrase of phrases) {
    const words = phraseWords(phrase);
    const whole = STATE_PHRASES[words.join(' ')];
    if (whole !== undefined) for (const c of whole) classes.add(c);
    const negated = words.some((w, at) => isNegator(w, words[at + 1]));
    const named = words.flatMap((w) => stateClassesOf(w));
    for (const c of negated ? oppositeClasses(named) : named) classes.add(c);
    if (negated && named.length === 0) classes.add('absent');
  }
  return classes;
}

/**
 * The outcome that a state means for a check.
 *
 * `classes` are those of the words beside the check ("stuck low" → stuck, low); `negated` turns them round.
 * A level that an outcome names wins; "fine" and "there" mean the working outcome; "missing" and "dead"
 * the outcome of that kind, else the only one that is not working. What stays open is returned as several.
 */
export function outcomeOfState(outcomes: OutcomeClasses, classes: ReadonlySet<StateClass>, negated: boolean): StateReading {
  if (negated) return negatedOutcome(outcomes, classes);
  const named = byOwnWords(outcomes, classes);
  if (named.length > 0) return { sure: named.length === 1, outcomes: named };
  const working = outcomes.find((o) => o.working)?.outcome;
  if (working === undefined) return NONE;
  if (classes.has('good')) return one(working);
  const bad = outcomes.filter((o) => !o.working);
  if (classes.has('present')) return isAboutHarm(outcomes) ? closest(bad) : one(working);
  if (classes.has('absent') && isAboutHarm(outcomes)) return one(working);
  if (classes.has('absent') || classes.has('dead')) return closest(firstWith(bad, ['absent', 'dead', 'open', 'stuck']));
  if (classes.has('stuck')) return closest(firstWith(bad, ['stuck', 'high', 'low', 'absent', 'dead']));
  if (classes.has('pulsing') || classes.has('steady')) return one(working);
  if (classes.has('bad')) return closest(firstWith(bad, ['bad', 'weak', 'dirty', 'cracked']));
  return NONE;
}

function negatedOutcome(outcomes: OutcomeClasses, classes: ReadonlySet<StateClass>): StateReading {
  const working = outcomes.find((o) => o.working);
  if (working === undefined) return NONE;
  if (classes.size === 0)
    return isAboutHarm(outcomes) ? one(working.outcome) : outcomeOfState(outcomes, new Set(['absent']), false);
  const eitherWay = outcomes.find((o) => !o.working && o.classes.has('stuck') && o.classes.has('high') && o.classes.has('low'));
  if (eitherWay !== undefined && [...classes].every((c) => c === 'high' || c === 'low')) return one(eitherWay.outcome);
  const denied = byOwnWords(outcomes, classes);
  const deniesHarm = denied.length > 0 && !denied.includes(working.outcome);
  if (deniesHarm) return one(working.outcome);
  if (classes.has('bad') || classes.has('dead') || classes.has('absent')) return one(working.outcome);
  const turned = new Set(oppositeClasses(classes));
  return turned.size === 0 ? NONE : outcomeOfState(outcomes, turned, false);
}

/** Outcomes that share most classes with the words, levels before general words. */
function byOwnWords(outcomes: OutcomeClasses, classes: ReadonlySet<StateClass>): string[] {
  let best = 0;
  let found: string[] = [];
  for (const { outcome, classes: own } of outcomes) {
    const shared = [...classes].filter((c) => own.has(c));
    if (shared.length === 0) continue;
    const weight = shared.reduce((sum, c) => sum + (GENERAL_CLASSES.has(c) ? 0.6 : 1), 0) / Math.sqrt(own.size);
    if (weight > best + 1e-9) [best, found] = [weight, [outcome]];
    else if (Math.abs(weight - best) < 1e-9) found.push(outcome);
  }
  return found;
}

/** True for a check that looks for something unwanted: its working outcome says "none", "clean" or "no …". */
function isAboutHarm(outcomes: OutcomeClasses): boolean {
  const own = outcomes.find((o) => o.working)?.classes;
  return own !== undefined && (own.has('absent') || own.has('clean')) && !own.has('present');
}

function firstWith(outcomes: OutcomeClasses, wanted: readonly StateClass[]): OutcomeClasses {
  for (const cls of wanted) {
    const found = outcomes.filter((o) => o.classes.has(cls));
    if (found.length > 0) return found;
  }
  return outcomes;
}

function one(outcome: string): StateReading {
  return { sure: true, outcomes: [outcome] };
}

function closest(outcomes: OutcomeClasses): StateReading {
  return { sure: outcomes.length === 1, outcomes: outcomes.map((o) => o.outcome) };
}
