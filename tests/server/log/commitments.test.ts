import { createHmac } from 'node:crypto';
import { copyFileSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PrismaClient } from '../../../prisma/generated/client';
import { deleteAccount } from '../../../server/accounts/account-data';
import { createDb } from '../../../server/db';
import { listDestroyedKeys } from '../../../server/repositories/log-key-repository';
import { insertLink } from '../../../server/repositories/submission-links';
import { personCommitment } from '../../../server/services/log/commitment';
import { replayCuts } from '../../../server/services/log/replay-cuts';
import { verifyLog } from '../../../server/services/log/verify-log';
import { randomKey } from '../../../server/ids';
import { cutLink } from '../../../server/services/submit-changes';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { testDatabase } from '../../setup/test-database';
import { addPerson, append, wholeLog } from './log-world';

const CASES = ['aaaaaaaaaaaaaaaa', 'bbbbbbbbbbbbbbbb'] as const;

/** A contributor with two posted cases, and entries by them about both. */
async function contributor() {
  const { db, url } = testDatabase();
  const cases = smallCases(CASES.length).map((record, i) => ({ ...record, id: CASES[i] ?? '' }));
  await fillDatabase(db, cases);
  await addPerson(db, 'ann');
  await addPerson(db, 'mod');
  for (const id of CASES) {
    await insertLink(db, id, 'ann');
    await append(db, { actorId: 'ann', kind: 'case-reported', subject: { kind: 'case', id } });
    await append(db, { actorId: 'mod', subject: { kind: 'case', id } });
  }
  return { db, url };
}

/** Every commitment to a person that the keys still in the database can make. */
async function recoverable(db: PrismaClient, entries: number): Promise<Map<string, string>> {
  const made = new Map<string, string>();
  for (const { userId, key } of await db.personKey.findMany()) {
    for (let seq = 1; seq <= entries; seq++) {
      if (key !== null) made.set(personCommitment(key, 'actor', seq, userId), userId);
      if (key !== null) made.set(personCommitment(key, 'subject', seq, userId), userId);
    }
  }
  return made;
}

async function whoActed(db: PrismaClient): Promise<(string | null)[]> {
  const rows = await wholeLog(db);
  const made = await recoverable(db, rows.length);
  return rows.map(({ actor }) => made.get(actor ?? '') ?? null);
}

describe('a commitment', () => {
  it('is HMAC-SHA-256 under the key, as in RFC 4231, test case 1', () => {
    // The RFC's key and text, put through the same primitive.
    const key = '0b'.repeat(20);
    const tag = createHmac('sha256', Buffer.from(key, 'hex')).update('Hi There').digest('hex');
    expect(tag).toBe('b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7');
    const text = 'actor:7:ann';
    expect(personCommitment(key, 'actor', 7, 'ann')).toBe(
      createHmac('sha256', Buffer.from(key, 'hex')).update(text).digest('hex'),
    );
  });

  it('says who acted while their keys are there, and nothing alike in two entries by one person', async () => {
    const { db } = await contributor();
    expect(await whoActed(db)).toEqual(['ann', 'mod', 'ann', 'mod']);
    const rows = await wholeLog(db);
    expect(new Set(rows.map((row) => row.actor)).size).toBe(4);
    expect(JSON.stringify(rows)).not.toMatch(/ann|mod|aaaaaaaaaaaaaaaa|bbbbbbbbbbbbbbbb/);
  });
});

describe('somebody who acts on their own account', () => {
  it('has one key for both places of their very first entry', async () => {
    const { db } = testDatabase();
    await addPerson(db, 'ann');
    await append(db, { actorId: 'ann', kind: 'role-changed', subject: { kind: 'account', id: 'ann' } });
    const [row] = await wholeLog(db);
    const made = await recoverable(db, 1);
    expect([made.get(row?.actor ?? ''), made.get(row?.subject ?? '')]).toEqual(['ann', 'ann']);
  });
});

describe('cutting a link', () => {
  it('leaves nothing that says who posted that case, says as much as before of the other, and verifies', async () => {
    const { db, url } = await contributor();
    const keys = await db.personKey.findMany({ where: { caseId: CASES[0] } });
    await cutLink(db, { id: 'ann', role: 'contributor' }, CASES[0], randomKey);
    expect(await whoActed(db)).toEqual([null, 'mod', 'ann', 'mod']);
    expect(await verifyLog(await wholeLog(db))).toMatchObject({ intact: true, entries: 4 });
    expect(await listDestroyedKeys(db)).toEqual(keys.map(({ id }) => id));
    // What was deleted is overwritten in the file, not only unlinked.
    await db.$queryRaw`PRAGMA wal_checkpoint(TRUNCATE)`;
    const file = readFileSync(url.slice('file:'.length)).toString('latin1');
    expect(keys[0]?.key).toMatch(/^[0-9a-f]{64}$/);
    expect(file).not.toContain(keys[0]?.key);
  });
});

describe('deleting an account', () => {
  it('leaves nothing that says what it did or what was done to it, and verifies', async () => {
    const { db } = await contributor();
    await append(db, { actorId: 'mod', kind: 'role-changed', subject: { kind: 'account', id: 'ann' } });
    const about = async () => (await recoverable(db, 5)).get((await wholeLog(db))[4]?.subject ?? '');
    expect(await about()).toBe('ann');
    await deleteAccount(db, 'ann');
    expect(await about()).toBeUndefined();
    expect(await whoActed(db)).toEqual([null, 'mod', null, 'mod', 'mod']);
    expect(await verifyLog(await wholeLog(db))).toMatchObject({ intact: true, entries: 5 });
    expect(await db.personKey.findMany({ where: { userId: 'ann' } })).toEqual([]);
    expect(await listDestroyedKeys(db)).toHaveLength(3);
  });
});

describe('restoring a backup', () => {
  it('cuts and deletes again what was cut and deleted since', async () => {
    const { db, url } = await contributor();
    await addPerson(db, 'bea');
    await db.$queryRaw`PRAGMA wal_checkpoint(TRUNCATE)`;
    const backup = `${url}.backup`;
    copyFileSync(url.slice('file:'.length), backup.slice('file:'.length));
    await cutLink(db, { id: 'ann', role: 'contributor' }, CASES[0], randomKey);
    await deleteAccount(db, 'bea');
    const destroyed = await listDestroyedKeys(db);

    const restored = createDb(backup);
    expect(await whoActed(restored)).toEqual(['ann', 'mod', 'ann', 'mod']);
    expect(await replayCuts(restored, destroyed)).toEqual({ links: 1, accounts: 1 });
    expect(await whoActed(restored)).toEqual([null, 'mod', 'ann', 'mod']);
    expect(await restored.postedCase.findMany({ select: { caseId: true } })).toEqual([{ caseId: CASES[1] }]);
    expect(await restored.user.count({ where: { id: 'bea' } })).toBe(0);
    expect(await listDestroyedKeys(restored)).toEqual(destroyed);
    expect(await replayCuts(restored, destroyed)).toEqual({ links: 0, accounts: 0 });
    await restored.$disconnect();
  });
});
