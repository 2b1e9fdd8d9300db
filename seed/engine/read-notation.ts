import type { FaultModel } from './fault-model';

/** What one way of failing shows: P(present) per symptom, and P(outcome) per check, before leaks and misreadings. */
export type Shown = {
  readonly states: ReadonlySet<string>;
  readonly symptoms: ReadonlyMap<string, number>;
  readonly checks: ReadonlyMap<string, ReadonlyMap<string, number>>;
};

type Words = {
  readonly states: readonly string[];
  readonly symptoms: readonly (readonly [slug: string, p: number])[];
  readonly checks: ReadonlyMap<string, ReadonlyMap<string, number>>;
};

const PRESENT = 0.9;
const OUTCOME = 0.93;

const alreadyRead = new Map<string, Words>();

/** Reads one text of the notation that `FaultModel` tells of, once. Throws on a number that is no probability. */
export function readWords(text: string): Words {
  const known = alreadyRead.get(text) ?? parseWords(text);
  alreadyRead.set(text, known);
  return known;
}

function parseWords(text: string): Words {
  const states: string[] = [];
  const symptoms: [string, number][] = [];
  const checks = new Map<string, Map<string, number>>();
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const [name = '', number] = word.split(':');
    const p = number === undefined ? null : Number(number);
    if (p !== null && !(p >= 0 && p <= 1)) throw new Error(`No probability: ${word}`);
    const [check, outcome] = name.split('=');
    if (name.startsWith('@')) symptoms.push([name.slice(1), p ?? PRESENT]);
    else if (check !== undefined && outcome !== undefined) {
      const outcomes = checks.get(check) ?? new Map<string, number>();
      outcomes.set(outcome, p ?? OUTCOME);
      checks.set(check, outcomes);
    } else states.push(name);
  }
  return { states, symptoms, checks };
}

/**
 * What follows from texts in order of nearness: their own words, then their states, then the states of those, each
 * state once. Symptoms add up as independent reasons; the first text that speaks of a check decides it. What a state shows
 * on devices of one category only stands under its name with "in" and the category.
 */
export function whatIsShown(texts: readonly string[], states: FaultModel['states'], category: string): Shown {
  const symptoms = new Map<string, number>();
  const checks = new Map<string, ReadonlyMap<string, number>>();
  const seen = new Set<string>();
  const open = texts.map(readWords);
  for (let next = open.shift(); next; next = open.shift()) {
    for (const [slug, p] of next.symptoms) symptoms.set(slug, 1 - (1 - (symptoms.get(slug) ?? 0)) * (1 - p));
    for (const [slug, outcomes] of next.checks) if (!checks.has(slug)) checks.set(slug, outcomes);
    for (const state of next.states) {
      if (seen.has(state)) continue;
      seen.add(state);
      const text = states[state];
      if (text === undefined) throw new Error(`The fault model has no state ${state}.`);
      const there = states[`${state} in ${category}`];
      if (there !== undefined) open.push(readWords(there));
      open.push(readWords(text));
    }
  }
  return { states: seen, symptoms, checks };
}
