import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { canonicalText, entryHash } from '../../../server/services/log/entry-hash';
import { verifyLog } from '../../../server/services/log/verify-log';
import { testDatabase } from '../../setup/test-database';
import { spawnCli } from '../cli/run-cli';
import { addPerson, append, tamper, wholeLog } from './log-world';

async function logOf(entries: number) {
  const { db, url } = testDatabase();
  await addPerson(db, 'mod');
  for (let i = 0; i < entries; i++) await append(db, { actorId: 'mod', detail: { number: i } });
  return { db, url, rows: await wholeLog(db) };
}

describe('canonical JSON', () => {
  it('is that of RFC 8785, section 3.2.2: numbers, escapes and the order of keys', () => {
    // The RFC's own example, and the text that it prescribes for it.
    const example = {
      // biome-ignore lint/correctness/noPrecisionLoss: the RFC's own number
      numbers: [333333333.33333329, 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    };
    expect(canonicalText(example)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('sorts keys by UTF-16 units, as in section 3.2.3', () => {
    const keys = { '\u20ac': 1, '\r': 2, '\ufb33': 3, '1': 4, '\ud83d\ude00': 5, '\u0080': 6, '\u00f6': 7 };
    expect([...canonicalText(keys).matchAll(/:(\d)/g)].map((m) => m[1]).join('')).toBe('2467153');
  });

  it('refuses what JSON has no form for', () => {
    expect(() => canonicalText({ share: Number.NaN })).toThrow();
    expect(() => canonicalText(undefined)).toThrow();
  });
});

describe('appending', () => {
  it('chains each entry to the one before, by SHA-256 over the canonical JSON of all that it says', async () => {
    const { rows } = await logOf(3);
    expect(rows.map((row) => row.seq)).toEqual([1, 2, 3]);
    expect(rows[0]?.prevHash).toBe('0'.repeat(64));
    for (const [i, { hash, ...said }] of rows.entries()) {
      // Written out by hand: keys in alphabetical order, no blanks.
      const { actor, detail, kind, month, prevHash, seq, subject, subjectKind, time } = said;
      const text = `{"actor":"${actor}","detail":${JSON.stringify(detail)},"kind":"${kind}","month":"${month}","prevHash":"${prevHash}","seq":${seq},"subject":"${subject}","subjectKind":"${subjectKind}","time":${JSON.stringify(time)}}`;
      expect(hash).toBe(createHash('sha256').update(text).digest('hex'));
      expect(rows[i + 1]?.prevHash ?? hash).toBe(hash);
    }
  });

  it('keeps the month, and the time only of what needs it', async () => {
    const { db } = testDatabase();
    await addPerson(db, 'keeper');
    await append(db, { actorId: 'keeper' });
    await append(db, { actorId: 'keeper', kind: 'role-changed', subject: { kind: 'account', id: 'keeper' } });
    expect((await wholeLog(db)).map(({ month, time }) => [month, time])).toEqual([
      ['2026-03', null],
      ['2026-03', '2026-03-04T05:06:07Z'],
    ]);
  });

  it('is taken back with the transaction that it stands in, and refuses to stand in none', async () => {
    const { db } = testDatabase();
    const { appendLog } = await import('../../../server/services/log/append-log');
    const input = {
      at: new Date(0),
      kind: 'case-accepted',
      actorId: null,
      subject: { kind: 'case', id: 'a' },
      detail: {},
    } as const;
    await expect(
      db.$transaction(async (tx) => {
        await appendLog(tx, input);
        throw new Error('changed my mind');
      }),
    ).rejects.toThrow('changed my mind');
    expect(await wholeLog(db)).toEqual([]);
    await expect(appendLog(db, input)).rejects.toThrow('transaction');
  });

  it('comes one after another, asked for at once', async () => {
    const { db } = testDatabase();
    await Promise.all(Array.from({ length: 12 }, (_, n) => append(db, { detail: { n } })));
    const rows = await wholeLog(db);
    expect(new Set(rows.map((row) => row.detail)).size).toBe(12);
    expect(await verifyLog(rows)).toMatchObject({ intact: true, entries: 12 });
  });

  it('from two programs at once gives one chain', { timeout: 60_000 }, async () => {
    const { db, url } = testDatabase();
    for (const id of ['ann', 'bea']) await addPerson(db, id);
    const runs = await Promise.all(['ann', 'bea'].map((name) => spawnCli(['user', 'role', name, 'moderator'], url)));
    expect(runs.map(({ code }) => code)).toEqual([0, 0]);
    expect(await verifyLog(await wholeLog(db))).toMatchObject({ intact: true, entries: 2 });
  });

  it('refuses a detail as long as a story', async () => {
    const { db } = testDatabase();
    await expect(append(db, { detail: { text: 'x'.repeat(9000) } })).rejects.toThrow('longer');
  });
});

describe('the database itself', () => {
  it.each([
    ['a change', `UPDATE "LogEntry" SET "kind" = 'case-declined' WHERE "seq" = 1`],
    ['a removal', 'DELETE FROM "LogEntry" WHERE "seq" = 2'],
    [
      'a replacement',
      `INSERT OR REPLACE INTO "LogEntry" SELECT "seq", "month", "time", 'case-declined', "subjectKind", "subject", "actor", "detail", "prevHash", "hash" FROM "LogEntry" WHERE "seq" = 2`,
    ],
    [
      'an entry with a gap before it',
      `INSERT INTO "LogEntry" SELECT 9, "month", "time", "kind", "subjectKind", "subject", "actor", "detail", "hash", 'x' FROM "LogEntry" WHERE "seq" = 2`,
    ],
    [
      'a fork',
      `INSERT INTO "LogEntry" SELECT 3, "month", "time", "kind", "subjectKind", "subject", "actor", "detail", "hash", 'x' FROM "LogEntry" WHERE "seq" = 1`,
    ],
  ])('refuses %s', async (_what, sql) => {
    const { db, rows } = await logOf(2);
    await expect(db.$executeRawUnsafe(sql)).rejects.toThrow();
    expect(await wholeLog(db)).toEqual(rows);
  });
});

describe('verifying', () => {
  it('passes a log as it was written, and one without entries', async () => {
    const { rows } = await logOf(4);
    expect(await verifyLog(rows)).toEqual({ intact: true, entries: 4, head: { seq: 4, hash: rows[3]?.hash } });
    expect(await verifyLog([])).toEqual({ intact: true, entries: 0, head: null });
  });

  it.each([
    ['seq', `"seq" = 20`],
    ['month', `"month" = '2026-02'`],
    ['time', `"time" = '2026-03-04T00:00:00Z'`],
    ['kind', `"kind" = 'case-declined'`],
    ['subjectKind', `"subjectKind" = 'word'`],
    ['subject', `"subject" = '${'b'.repeat(64)}'`],
    ['actor', '"actor" = NULL'],
    ['detail', `"detail" = '{"number":7}'`],
    ['the blanks of the detail', `"detail" = '{ "number":1}'`],
    ['prevHash', `"prevHash" = '${'c'.repeat(64)}'`],
    ['hash', `"hash" = '${'d'.repeat(64)}'`],
  ])('finds a changed %s, in the entry where it was changed', async (field, change) => {
    const { db, url } = await logOf(4);
    tamper(url, `UPDATE "LogEntry" SET ${change} WHERE "seq" = 2`);
    // A moved entry is missed where it stood.
    expect(await verifyLog(await wholeLog(db))).toMatchObject({ intact: false, seq: field === 'seq' ? 3 : 2 });
  });

  it('finds an entry whose hash was made to fit, at the one after it', async () => {
    const { db, url, rows } = await logOf(4);
    const second = { ...(rows[1] as (typeof rows)[number]), kind: 'case-declined' };
    tamper(url, `UPDATE "LogEntry" SET "kind" = '${second.kind}', "hash" = '${entryHash(second)}' WHERE "seq" = 2`);
    expect(await verifyLog(await wholeLog(db))).toMatchObject({ intact: false, seq: 3 });
  });

  it.each([
    ['the first', 1, 2],
    ['one in the middle', 2, 3],
  ])('finds that %s was removed', async (_which, gone, found) => {
    const { db, url } = await logOf(4);
    tamper(url, `DELETE FROM "LogEntry" WHERE "seq" = ${gone}`);
    expect(await verifyLog(await wholeLog(db))).toMatchObject({ intact: false, seq: found });
  });

  it('sees that the newest were taken off, or all written anew, only against a checkpoint kept elsewhere', async () => {
    const { rows } = await logOf(4);
    const checkpoint = { seq: 4, hash: rows[3]?.hash ?? '' };
    const short = rows.slice(0, 2);
    expect(await verifyLog(short)).toMatchObject({ intact: true, entries: 2 });
    expect(await verifyLog(short, [checkpoint])).toMatchObject({ intact: false, seq: 3 });
    expect(await verifyLog([], [checkpoint])).toMatchObject({ intact: false, seq: 1 });

    let prevHash = '0'.repeat(64);
    const anew = rows.map((row) => {
      const { hash: _, ...said } = { ...row, kind: 'case-declined', prevHash };
      prevHash = entryHash(said);
      return { ...said, hash: prevHash };
    });
    expect(await verifyLog(anew)).toMatchObject({ intact: true });
    expect(await verifyLog(anew, [checkpoint])).toMatchObject({ intact: false, seq: 4 });
    expect(await verifyLog(rows, [checkpoint, { seq: 2, hash: rows[1]?.hash ?? '' }])).toMatchObject({ intact: true });
  });
});
