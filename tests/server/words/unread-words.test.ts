import { chmodSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { listUnreadWords } from '../../../server/repositories/unread-word-repository';
import { countableWords, countUnread, forgetUnread, writeUnread } from '../../../server/services/words/unread-words';
import { testDatabase } from '../../setup/test-database';
import { smallModel } from '../fixtures/small-model';

const model = smallModel([]);
const now = new Date('2026-03-04T05:06:07Z');
const countable = (text: string) => countableWords(model, text, model.read(text).unread);

beforeEach(forgetUnread);

describe('what may be counted', () => {
  it('is words that were not read, each once, in lower case', () => {
    expect(countable('grey screen, Frobnication frobnication of the sprongle')).toEqual(
      expect.arrayContaining(['frobnication', 'sprongle']),
    );
    expect(countable('grey screen')).toEqual([]);
  });

  it('is nothing that can give a person away', () => {
    const text =
      'grey screen frobnicates, call Martha Higginbottom on +44 20 7946 0958 or martha@bench.invalid, serial number QX1234567';
    const words = countable(text);
    expect(words).toContain('frobnicates');
    expect(words.join(' ')).not.toMatch(/martha|higginbottom|bench|qx|\d/);
  });
});

describe('counting', () => {
  const ask = (db: Parameters<typeof countUnread>[0], text: string) => countUnread(db, countable(text), now);

  it('keeps the word, the month and how often, and shows it from three look-ups on', async () => {
    const { db } = testDatabase();
    for (let i = 0; i < 3; i++) ask(db, 'it frobnicates');
    ask(db, 'it sprongles');
    expect(await db.unreadWord.count()).toBe(0);
    await writeUnread(db, now);
    expect(await db.unreadWord.findMany({ where: { word: 'frobnicates' } })).toEqual([
      { word: 'frobnicates', month: '2026-03', count: 3 },
    ]);
    const shown = await listUnreadWords(db, { since: '2026-01', least: 3, take: 10 });
    expect(shown).toEqual([{ word: 'frobnicates', count: 3 }]);
    expect(await listUnreadWords(db, { since: '2026-04', least: 3, take: 10 })).toEqual([]);
  });

  it('writes by itself once enough is held, and forgets what is two years old', async () => {
    const { db } = testDatabase();
    await db.unreadWord.create({ data: { word: 'ancient', month: '2024-02', count: 9 } });
    const syllables = ['ba', 'ko', 'mu', 'ri', 'te', 'zu'];
    const made = syllables.flatMap((a) => syllables.flatMap((b) => syllables.map((c) => `qu${a}${b}${c}x`)));
    for (const word of made.slice(0, 210))
      countUnread(db, countableWords(model, word, [{ text: word, start: 0, end: word.length }]), now);
    await writeUnread(db, now);
    expect(await db.unreadWord.count()).toBeGreaterThanOrEqual(200);
    expect(await db.unreadWord.count({ where: { word: 'ancient' } })).toBe(0);
  });

  it('is left be where the database cannot be written', async () => {
    const { db, url } = testDatabase();
    await db.unreadWord.count();
    await db.$queryRaw`PRAGMA query_only = ON`;
    chmodSync(url.slice('file:'.length), 0o444);
    ask(db, 'it frobnicates');
    await expect(writeUnread(db, now)).resolves.toBeUndefined();
    expect(await db.unreadWord.count()).toBe(0);
  });
});
