import type { Finding } from '../../shared/schemas/finding';
import type { FindingKey } from '../../shared/schemas/question';
import { sameKey } from './finding-code';
import type { Question } from './question';

/** Adds a finding, or gives it another value; whatever was said about the same thing before gives way. */
export function withFinding(question: Question, finding: Finding): Question {
  return {
    ...question,
    set: [...question.set.filter((other) => !sameKey(other, finding)), finding],
    without: question.without.filter((other) => !sameKey(other, finding)),
  };
}

/** Takes a finding out. One that was read from the words stays out through `without`. */
export function withoutFinding(question: Question, key: FindingKey, fromWords: boolean): Question {
  const rest = question.without.filter((other) => !sameKey(other, key));
  return {
    ...question,
    set: question.set.filter((other) => !sameKey(other, key)),
    without: fromWords ? [...rest, { kind: key.kind, id: key.id }] : rest,
  };
}

/** Puts a finding that was taken out back in. */
export function withRestored(question: Question, key: FindingKey): Question {
  return { ...question, without: question.without.filter((other) => !sameKey(other, key)) };
}

/** Sets a stretch of the words aside. */
export function withAside(question: Question, text: string): Question {
  return question.aside.includes(text) ? question : { ...question, aside: [...question.aside, text] };
}

/** Takes a stretch of the words back into account. */
export function withoutAside(question: Question, text: string): Question {
  return { ...question, aside: question.aside.filter((other) => other !== text) };
}

/** More words, joined to those that are there. */
export function withWords(question: Question, words: string): Question {
  const more = words.trim();
  if (more === '') return question;
  return { ...question, text: question.text.trim() === '' ? more : `${question.text.trim()}, ${more}` };
}
