import { type CapitalRun, type RunWord, runOf } from './capital-runs';
import { DASH_BEFORE, GREETING, PEOPLE_DO, POSSESSED, SIGN_OFF, STRONG_BEFORE, TITLE, VERB_AFTER, WEAK_BEFORE } from './person-cues';
import { monthNumber } from './month-words';
import type { FoundSpan } from './personal-detail';
import { PLACE_BEFORE, STRONG_PLACE_BEFORE, THING_AFTER } from './place-cues';

/** What is known of words with a capital. */
export type NameLists = {
  /** First names that are nothing else, and those that are words too; in lower case. */
  first: ReadonlySet<string>;
  doubtfulFirst: ReadonlySet<string>;
  places: ReadonlySet<string>;
  doubtfulPlaces: ReadonlySet<string>;
  /** Whether a lower-case word is a word of language or trade. */
  isOrdinary: (word: string) => boolean;
};

/** A run with what stands before and after it. */
type Scene = { run: CapitalRun; before: string; after: string; text: string };

const lower = (word: RunWord | undefined) => (word?.text ?? '').toLowerCase().replace(/['’]s$/u, '').replace(/\.$/u, '');
const isInitial = (word: RunWord | undefined) => /^\p{Lu}\.?$/u.test(word?.text ?? '') || /^(?:\p{Lu}\.)+$/u.test(word?.text ?? '');
const starts = (before: string) => /(?:^|[\n.!?:;•*>"“(]\s*|\n\s*[-–—\d.)]+\s*|^[-–—\d.)]+\s*)$/u.test(before);

/** One question is asked of the same words several times: the last answer is kept, since the patterns are long. */
function remembered(pattern: RegExp): (before: string) => boolean {
  let last: string | null = null;
  let answer = false;
  return (before) => {
    if (before !== last) {
      last = before;
      answer = pattern.test(before);
    }
    return answer;
  };
}

const asked = {
  STRONG_BEFORE: remembered(STRONG_BEFORE),
  GREETING: remembered(GREETING),
  SIGN_OFF: remembered(SIGN_OFF),
  WEAK_BEFORE: remembered(WEAK_BEFORE),
  PLACE_BEFORE: remembered(PLACE_BEFORE),
  STRONG_PLACE_BEFORE: remembered(STRONG_PLACE_BEFORE),
};

/** Characters before and after that are looked at. */
const SIGHT = 48;

/** What of a run is a person's name or a place, if any of it is. */
export function judgeRun(text: string, whole: CapitalRun, lists: NameLists): FoundSpan | null {
  const cued = asCuedRun(text, whole, lists);
  if (cued !== null) return cued;
  for (let from = 0; from < whole.words.length; from += 1) {
    const run = trimmed(whole.words.slice(from), lists);
    if (run === null) return null;
    from = whole.words.findIndex(({ start }) => start === run.start);
    const before = text.slice(Math.max(0, run.start - SIGHT), run.start);
    const scene = { run, before, after: text.slice(run.end, run.end + SIGHT), text };
    const found = asPlace(scene, lists, true) ?? asPerson(scene, lists) ?? asPlace(scene, lists, false);
    if (found !== null) return found;
  }
  return null;
}

/** After a cue that leaves no doubt the whole run is the name, words of language in it included: "near Little Hadbury". */
function asCuedRun(text: string, { words }: CapitalRun, { isOrdinary }: NameLists): FoundSpan | null {
  const [head] = words;
  if (words.length < 2 || head === undefined || !isOrdinary(lower(head)) || TITLE.test(head.text)) return null;
  const last = words.findLast((word) => !isOrdinary(lower(word)) && !isInitial(word));
  if (last === undefined) return null;
  const before = text.slice(Math.max(0, head.start - SIGHT), head.start);
  const span = { start: head.start, end: last.end };
  if (asked.STRONG_PLACE_BEFORE(before)) return { kind: 'place', ...span, certainty: 'possible' };
  return asked.STRONG_BEFORE(before) || asked.GREETING(before) ? { kind: 'personal-name', ...span, certainty: 'direct' } : null;
}

/** The run without the words of language at its beginning and end. */
function trimmed(words: RunWord[], { isOrdinary, doubtfulFirst, doubtfulPlaces, places, first }: NameLists): CapitalRun | null {
  const listed = (word: RunWord) => [first, doubtfulFirst, places, doubtfulPlaces].some((list) => list.has(lower(word)));
  const isTitle = (word: RunWord) => TITLE.test(word.text) && word !== words.at(-1);
  const opens = (word: RunWord) => isTitle(word) || isInitial(word) || !isOrdinary(lower(word)) || (doubtfulFirst.has(lower(word)) && word !== words.at(-1));
  const begin = words.findIndex(opens);
  if (begin < 0) return words.length > 0 && words.some(listed) && words.length === 1 ? runOf(words) : null;
  let end = words.length;
  while (end > begin + 1 && isOrdinary(lower(words[end - 1]))) end -= 1;
  return runOf(words.slice(begin, end));
}

function asPerson({ run, before, after, text }: Scene, lists: NameLists): FoundSpan | null {
  const [head, second] = run.words;
  const direct: FoundSpan = { kind: 'personal-name', start: run.start, end: run.end, certainty: 'direct' };
  if (head === undefined) return null;
  if (TITLE.test(head.text) && second !== undefined) return direct;
  const ordinary = lists.isOrdinary(lower(head));
  if (isInitial(head)) {
    const surname = run.words.find((word) => !isInitial(word));
    const isName = surname !== undefined && lower(surname).length > 2 && !lists.isOrdinary(lower(surname));
    if (/\d ?$/u.test(before) && /^[VAWF]\.$/u.test(head.text)) return null;
    const cued = asked.STRONG_BEFORE(before) || asked.SIGN_OFF(before);
    if (surname === undefined) return /\.\p{Lu}?\.$/u.test(text.slice(run.start, run.end)) && PEOPLE_DO.test(after) ? direct : null;
    return (isName && (head.text.endsWith('.') || cued)) || (head.text.endsWith('.') && cued && run.words.length > 1) ? direct : null;
  }
  const isFirst = lower(head).split('-').some((part) => lists.first.has(part));
  const mayBeFirst = isFirst || lists.doubtfulFirst.has(lower(head));
  const surnameFollows = second !== undefined && !lists.isOrdinary(lower(second));
  if (mayBeFirst && surnameFollows && (isFirst || !lists.places.has(`${lower(head)} ${lower(second)}`)) && !THING_AFTER.test(after)) return direct;
  if (!ordinary && (asked.STRONG_BEFORE(before) || asked.GREETING(before) || asked.SIGN_OFF(before))) return direct;
  if (ordinary && mayBeFirst && !THING_AFTER.test(after) && isFarewell(before, after)) return direct;
  if (ordinary) return mayBeFirst && VERB_AFTER.test(after) && /(?:relation|mate|friend|brother|customer) $/iu.test(before) ? direct : null;
  if (isFirst) return asFirstName(direct, before, after);
  if ((PEOPLE_DO.test(after) || POSSESSED.test(after)) && !SPEAKING_THING.test(lower(run.words.at(-1)))) return direct;
  if (surnameFollows && asked.WEAK_BEFORE(before) && VERB_AFTER.test(after)) return { ...direct, certainty: 'possible' };
  if (surnameFollows && /\b(?:bought|borrowed|got|came|gift|present|loan|received|traded|inherited|picked up|letter|note|call|parcel|message|mail) (?:it |this |one |them )?(?:from|by|to|for) $/iu.test(before)) return direct;
  if (!ordinary && /(?:^|\n)\s*(?:--|—)\s*$/u.test(before) && /^\s*(?:$|\n)/u.test(after)) return direct;
  if (DASH_BEFORE.test(before) && /^\s*$/u.test(after) && before.trim() !== '' && !/^[-–—~/\s]*$/u.test(before)) return { ...direct, certainty: 'possible' };
  return null;
}

/** Things that say, show and confirm as people do. */
const SPEAKING_THING =
  /(?:meter|scope|analy[sz]er|tester|probe|program|programmer|schematic|manual|datasheet|sheet|label|sticker|diagram|display|screen|counter|website|forum|book|guide|page|log|list|listing|advert|ad|note|notes|documentation|docs|diagnostics?|report|wiki|internet|seller|buyer|owner|customer|nobody|everyone|people|shop|museum|magazine|article|video|photo|picture|message|monitor|tuner|printer|speaker|drive|board|machine|computer|console|keyboard|supply|chip|checker|loader|reader|firmware|software|dump)$/u;

/** A doubtful first name that ends or opens a letter: "Cheers, Nick", "Hi Mark,". */
const isFarewell = (before: string, after: string) =>
  (asked.SIGN_OFF(before) && /^\s*(?:$|[.!\n])/u.test(after)) || (asked.GREETING(before) && /^\s*[,!\n]/u.test(after)) || (asked.STRONG_BEFORE(before) && /^(?:\s*(?:$|[.,!;)\n])|['’]s| \p{Ll})/u.test(after));

/** One first name alone: in the middle of a sentence it is somebody; at the beginning it has to do something. */
function asFirstName(direct: FoundSpan, before: string, after: string): FoundSpan | null {
  if (THING_AFTER.test(after)) return null;
  if (asked.STRONG_BEFORE(before) || asked.WEAK_BEFORE(before) || VERB_AFTER.test(after) || DASH_BEFORE.test(before)) return direct;
  if (!starts(before)) return direct;
  return /^\s*$/u.test(after) || /^,? (?:and|who) /u.test(after) ? direct : null;
}

function asPlace({ run, before, after, text }: Scene, lists: NameLists, listedOnly: boolean): FoundSpan | null {
  if (run.words.some((word) => isInitial(word) || TITLE.test(word.text)) || THING_AFTER.test(after)) return null;
  const name = text.slice(run.start, run.end).toLowerCase().replace(/['’]s$/u, '');
  const head = lower(run.words[0]);
  const place = (certainty: FoundSpan['certainty']): FoundSpan => ({ kind: 'place', start: run.start, end: run.end, certainty });
  const listed = lists.places.has(name) || (lists.places.has(head) && !lists.first.has(head));
  const comesFrom = /(\p{Lu}\p{Ll}+) from $/u.exec(before)?.[1]?.toLowerCase();
  const strong = asked.STRONG_PLACE_BEFORE(before) || (comesFrom !== undefined && lists.first.has(comesFrom));
  if (listed && strong) return place('direct');
  if (listed && asked.PLACE_BEFORE(before) && !lists.isOrdinary(head)) return place('possible');
  if (listedOnly) return null;
  if (strong && (lists.doubtfulPlaces.has(head) || !lists.isOrdinary(head))) return place('possible');
  if (asked.PLACE_BEFORE(before) && lists.doubtfulPlaces.has(head) && /\b(?:in|near|from) $/u.test(before) && /^\s*(?:$|[.,;!)\n])/u.test(after) && monthNumber(head) === null) return place('possible');
  return listed && !lists.first.has(head) && !lists.isOrdinary(head) && !starts(before) ? place('possible') : null;
}
