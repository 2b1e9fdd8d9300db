import type { Symptom } from '../../schemas/vocabulary';
import { isNegator, phraseWords } from './phrase-terms';
import { stateClassesOf } from './state-words';
import { BREAK_WORDS, FILLER_WORDS, GRAMMAR_WORDS, JOINER_WORDS, WEAK_WORDS } from './word-classes';

export type SymptomSubject = { words: string[]; lack: 'absent' | 'dead' | 'good' };

const LONGEST_SUBJECT_PHRASE = 5;

/**
 * What a symptom says is missing or dead: "picture" of "no picture", "power light" of "power light dead",
 * "keyboard" of the absent phrase "keyboard fine". With these, "neither sound nor picture",
 * "picture missing" and "picture ok" are read without an entry of their own.
 * Returns an empty list where the symptom is something that is there ("hum").
 */
export function subjectsOf(symptom: Pick<Symptom, 'label' | 'synonyms' | 'absentPhrases'>): SymptomSubject[] {
  const lacking = [symptom.label, ...symptom.synonyms].map((p) => subjectOf(phraseWords(p), LACK));
  const fine = symptom.absentPhrases.map((p) => subjectOf(phraseWords(p), FINE));
  return [...lacking, ...fine].filter((s): s is SymptomSubject => s !== null);
}

type Reader = (word: string, next: string | undefined) => SymptomSubject['lack'] | null;

const LACK: Reader = (word, next) => {
  if (isNegator(word, next)) return 'absent';
  const classes = stateClassesOf(word);
  return classes.includes('absent') ? 'absent' : classes.includes('dead') ? 'dead' : null;
};
const FINE: Reader = (word) => (stateClassesOf(word).some((c) => c === 'good' || c === 'present') ? 'good' : null);

function subjectOf(words: string[], stateOf: Reader): SymptomSubject | null {
  if (words.length > LONGEST_SUBJECT_PHRASE || words.some((w) => JOINER_WORDS.has(w) || BREAK_WORDS.has(w))) return null;
  const states = words.map((w, at) => stateOf(w, words[at + 1]));
  const at = states.findIndex((s) => s !== null);
  const lack = states[at];
  if (lack === undefined || lack === null) return null;
  const rest = words.filter((w, i) => states[i] === null && !WORKING_WORDS.has(w));
  const edge = at === 0 || words.slice(at + 1).every((w) => GRAMMAR_WORDS.has(w) || WORKING_WORDS.has(w) || FILLER_WORDS.has(w));
  const telling = rest.filter((w) => !GRAMMAR_WORDS.has(w) && !FILLER_WORDS.has(w) && !WEAK_WORDS.has(w));
  return edge && telling.length > 0 && states.filter((s) => s !== null).length === 1 ? { words: rest, lack } : null;
}

/** "not working" denies work, not the thing. */
const WORKING_WORDS: ReadonlySet<string> = new Set([
  'work',
  'works',
  'working',
  'worked',
  'respond',
  'responds',
  'responding',
  'function',
  'functions',
  'functioning',
]);
