import { QUESTION_TEXT_LENGTH, type Question as AskedQuestion } from '../../shared/schemas/question';
import { slugSchema } from '../../shared/schemas/terms';
import { findingFromCode, findingToCode, keyFromCode, keyToCode } from './finding-code';

const FINDINGS_MAX = 80;

/** The whole question of a look-up as the address holds it. */
export type Question = AskedQuestion & {
  /** Stretches of the words that the user set aside as meaning nothing here; for the page alone. */
  aside: string[];
};

export type SearchParams = Record<string, string | string[] | undefined>;

export const EMPTY_QUESTION: Question = { text: '', device: null, complete: false, set: [], without: [], aside: [], why: null };

/** Every value of a parameter, blank ones left out. */
export function allOf(params: SearchParams, name: string): string[] {
  const value = params[name];
  const list = value === undefined ? [] : Array.isArray(value) ? value : [value];
  return list.filter((entry) => entry.trim() !== '');
}

/** First value of a parameter that is not blank, or null. */
export function firstOf(params: SearchParams, name: string): string | null {
  return allOf(params, name)[0] ?? null;
}

function slugOf(params: SearchParams, name: string): string | null {
  const parsed = slugSchema.safeParse(firstOf(params, name) ?? '');
  return parsed.success ? parsed.data : null;
}

/** Each thing once, said last: an address can repeat itself. */
function lastOfEach<T>(things: T[], nameOf: (thing: T) => string): T[] {
  return [...new Map(things.map((thing) => [nameOf(thing), thing])).values()].slice(0, FINDINGS_MAX);
}

const isThere = <T>(value: T | null): value is T => value !== null;

/** Reads the question out of an address. Never throws: a word that says nothing is left out. */
export function readQuestion(params: SearchParams): Question {
  return {
    text: (firstOf(params, 'q') ?? '').slice(0, QUESTION_TEXT_LENGTH),
    device: slugOf(params, 'on'),
    complete: firstOf(params, 'all') !== null,
    set: lastOfEach(allOf(params, 'f').map(findingFromCode).filter(isThere), keyToCode),
    without: lastOfEach(allOf(params, 'not').map(keyFromCode).filter(isThere), keyToCode),
    aside: lastOfEach(allOf(params, 'aside'), (text) => text),
    why: slugOf(params, 'why'),
  };
}

/** The question as address parameters, in a fixed order; the inverse of `readQuestion`. */
export function questionPairs(question: Question): [string, string][] {
  const pairs: [string, string][] = [];
  if (question.text.trim() !== '') pairs.push(['q', question.text]);
  if (question.device !== null) pairs.push(['on', question.device]);
  if (question.complete) pairs.push(['all', '1']);
  for (const finding of question.set) pairs.push(['f', findingToCode(finding)]);
  for (const key of question.without) pairs.push(['not', keyToCode(key)]);
  for (const text of question.aside) pairs.push(['aside', text]);
  if (question.why !== null) pairs.push(['why', question.why]);
  return pairs;
}

/** An address: a path, the question and whatever else a page keeps there. */
export function questionHref(path: string, question: Question, more: [string, string][] = []): string {
  const query = new URLSearchParams([...questionPairs(question), ...more]).toString();
  return query === '' ? path : `${path}?${query}`;
}

/** Whether nothing was asked: no words and no findings. A device alone is not yet a question. */
export function isBlank(question: Question): boolean {
  return question.text.trim() === '' && question.set.length === 0;
}
