import { findPersonalDetails } from '../../../shared/domain/anonymise/find-personal-details';
import { knownWordsOf } from '../../../shared/domain/anonymise/known-words';
import type { KnownWords } from '../../../shared/domain/anonymise/personal-detail';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { Db } from '../../db';
import { addUnreadWords, deleteUnreadBefore } from '../../repositories/unread-word-repository';
import { getLogger } from '../../watching/logger';
import { inTransaction } from '../submit-transaction';
import { matchesOf } from '../../../shared/domain/text/matches-of';

/** A word is shown from this many look-ups on: what one or two people typed is nobody's business. */
export const LEAST_SHOWN = 3;
/** Months that counts are kept. */
const KEPT_MONTHS = 24;
/** Words held in memory before they are written; more than this at once are not counted. */
const HELD_MOST = 2_000;
const WRITE_AFTER = 200;
const WRITE_EVERY = 60_000;
/** Letters only, with hyphens or apostrophes inside: numbers and codes can be somebody's. */
const WORD = /\p{L}[\p{L}'’-]*\p{L}/gu;
const LONGEST = 30;
const SHORTEST = 3;

type Span = { text: string; start: number; end: number };
type Held = { counts: Map<string, number>; since: number; writing: Promise<void> | null };

const kept = globalThis as typeof globalThis & { secondBenchUnread?: Held };
const held = (): Held => (kept.secondBenchUnread ??= { counts: new Map(), since: 0, writing: null });
const known = new WeakMap<CasebookModel, KnownWords>();

/**
 * The words of a question that were not read and may be counted: each once, in lower case, none in or next to anything that can
 * give a person away.
 */
export function countableWords(model: CasebookModel, text: string, unread: readonly Span[]): string[] {
  const spans = unread.filter(({ start, end }) => end > start);
  if (spans.length === 0) return [];
  const words = known.get(model) ?? knownWordsOf(model.coding.vocabulary, model.coding.catalogue);
  known.set(model, words);
  const details = findPersonalDetails(text, words);
  const found = new Set<string>();
  for (const { start, end } of spans) {
    for (const match of matchesOf(text.slice(start, end), WORD)) {
      const [from, to] = [start + match.index, start + match.index + match[0].length];
      const isPersonal = details.some((detail) => detail.start < to && detail.end > from);
      if (!isPersonal && match[0].length >= SHORTEST && match[0].length <= LONGEST) found.add(match[0].toLowerCase());
    }
  }
  return [...found];
}

/**
 * Counts words that a look-up could not read (those of `countableWords`), without anything of who asked. It costs the look-up no write:
 * counts are held in memory and written together, behind the answer, once a minute of use or when 200 words are held. Where they
 * cannot be written (a read-only disk) they are dropped, and the look-up knows nothing of it.
 */
export function countUnread(db: Db, words: readonly string[], now: Date): void {
  const at = now.getTime();
  const current = held();
  if (current.counts.size === 0) current.since = at;
  for (const word of words) {
    if (current.counts.size < HELD_MOST || current.counts.has(word))
      current.counts.set(word, (current.counts.get(word) ?? 0) + 1);
  }
  const isDue = current.counts.size >= WRITE_AFTER || at - current.since >= WRITE_EVERY;
  if (current.counts.size > 0 && isDue) void writeUnread(db, now);
}

/** Writes what is held now. It never fails: what cannot be written is dropped. */
export async function writeUnread(db: Db, now: Date): Promise<void> {
  const current = held();
  await current.writing;
  const counts = [...current.counts].map(([word, count]) => ({ word, count }));
  current.counts.clear();
  if (counts.length === 0) return;
  const month = now.toISOString().slice(0, 7);
  current.writing = inTransaction(db, async (tx) => {
    await addUnreadWords(tx, month, counts);
    await deleteUnreadBefore(tx, monthsBefore(month, KEPT_MONTHS));
  })
    .catch((error: unknown) => getLogger().warn({ err: error }, 'What look-ups could not read was not counted: it cannot be written.'))
    .finally(() => {
      current.writing = null;
    });
  await current.writing;
}

/** Forgets what is held, for tests. */
export function forgetUnread(): void {
  delete kept.secondBenchUnread;
}

/** The month that lies so many before another; both YYYY-MM. */
export function monthsBefore(month: string, count: number): string {
  const at = new Date(`${month}-01T00:00:00Z`);
  at.setUTCMonth(at.getUTCMonth() - count);
  return at.toISOString().slice(0, 7);
}
