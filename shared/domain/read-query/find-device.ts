import { distance } from 'fastest-levenshtein';
import type { DeviceCatalogue } from '../../schemas/device';
import { normalWord } from './spelling';
import { EVERYDAY_WORDS } from './word-classes';
import type { RawToken } from './token';
import { tokenise } from './tokenise';

/** Names of models and revisions as word lists, longest first. */
export type DeviceNames = {
  models: { slug: string; words: string[] }[];
  boards: ReadonlyMap<string, { slug: string; words: string[] }[]>;
};

/** The device that the words mention and the raw tokens that say so. */
export type DeviceMention = { slug: string; tokens: ReadonlySet<number> };

/** Words before the letter or number of a board revision. */
const REVISION_WORDS: ReadonlySet<string> = new Set(['rev', 'revision', 'issue', 'board', 'version', 'ver', 'mk', 'mark', 'iss']);

export function deviceNames(catalogue: DeviceCatalogue): DeviceNames {
  const models = catalogue.models.flatMap((m) =>
    [m.name, m.slug.replaceAll('-', ' '), ...m.synonyms].map((name) => ({ slug: m.slug, words: wordsOf(name) })),
  );
  const boards = new Map(
    catalogue.models.map((m) => [m.slug, m.boards.map((b) => ({ slug: b.slug, words: wordsOf(b.revision) }))]),
  );
  return { models: models.filter((m) => m.words.length > 0).sort((a, b) => lengthOf(b.words) - lengthOf(a.words)), boards };
}

function wordsOf(name: string): string[] {
  return tokenise(name, 12)
    .tokens.filter((t) => !t.mark)
    .map((t) => normalWord(t.word));
}

function lengthOf(words: readonly string[]): number {
  return words.join('').length;
}

/** Finds the first model named, with its board revision if one is named nearby; null where none is. */
export function findDevice(raw: readonly RawToken[], names: DeviceNames): DeviceMention | null {
  const words = raw.map((t) => (t.mark ? '' : normalWord(t.word)));
  for (const model of names.models) {
    const found = findWords(words, model.words);
    if (found === null || !standsAsName(words, found, model.words)) continue;
    const board = findBoard(words, found, names.boards.get(model.slug) ?? []);
    return { slug: board?.slug ?? model.slug, tokens: new Set([...found, ...(board?.tokens ?? [])]) };
  }
  return null;
}

const BEFORE_NAME: ReadonlySet<string> = new Set(['a', 'an', 'the', 'my', 'this', 'on', 'for', 'ormadic', 'old', '']);

/** A name that is also an everyday word ("three") counts only where it stands as a name: first, or after "my", and at the end of its item. */
function standsAsName(words: readonly string[], found: readonly number[], name: readonly string[]): boolean {
  const only = name[0];
  if (name.length !== 1 || only === undefined || !EVERYDAY_WORDS.has(only)) return true;
  const at = found[0] as number;
  const after = words[at + 1];
  const ends = after === undefined || after === '' || REVISION_WORDS.has(after);
  return (at === 0 || BEFORE_NAME.has(words[at - 1] as string)) && ends;
}

function findWords(words: readonly string[], wanted: readonly string[]): number[] | null {
  for (let start = 0; start < words.length; start += 1) {
    const places: number[] = [];
    let at = start;
    for (const word of wanted) {
      while (places.length > 0 && words[at] === '' && at < words.length) at += 1;
      if (at >= words.length || !sameName(words[at] as string, word)) break;
      places.push(at);
      at += 1;
    }
    if (places.length === wanted.length) return places;
  }
  const glued = wanted.join('');
  const whole = words.findIndex((w) => w === glued && w.length > 2);
  return whole >= 0 ? [whole] : null;
}

/** Names of seven letters and more forgive two slips, of five and more one. */
function sameName(written: string, name: string): boolean {
  if (written === name) return true;
  if (name.length < 5 || /\d/.test(name) || written.length < 4 || written[0] !== name[0]) return false;
  return distance(written, name) <= (name.length >= 7 ? 2 : 1);
}

/** A revision's own words ("rev b"), or its letter behind any word for revision ("board b", "issue b"). */
function findBoard(
  words: readonly string[],
  model: readonly number[],
  boards: readonly { slug: string; words: string[] }[],
): { slug: string; tokens: number[] } | null {
  for (const board of boards) {
    const last = board.words.at(-1);
    if (last === undefined) continue;
    for (let at = 0; at < words.length; at += 1) {
      if (words[at] !== last || model.includes(at)) continue;
      const before = previousWord(words, at);
      if (
        before !== null &&
        !model.includes(before) &&
        (REVISION_WORDS.has(words[before] as string) || board.words.at(-2) === words[before])
      )
        return { slug: board.slug, tokens: [before, at] };
    }
    const glued = words.findIndex((w) => [...REVISION_WORDS].some((r) => w === r + last));
    if (glued >= 0) return { slug: board.slug, tokens: [glued] };
    const next = nextWord(words, model.at(-1) as number);
    if (next !== null && words[next] === last && (last.length > 1 || last !== 'a')) return { slug: board.slug, tokens: [next] };
  }
  return null;
}

function previousWord(words: readonly string[], at: number): number | null {
  for (let i = at - 1; i >= 0; i -= 1) if (words[i] !== '') return i;
  return null;
}

function nextWord(words: readonly string[], at: number): number | null {
  for (let i = at + 1; i < words.length; i += 1) if (words[i] !== '') return i;
  return null;
}
