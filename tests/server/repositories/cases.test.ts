import { describe, expect, it } from 'vitest';
import { randomCaseId } from '../../../server/ids';
import { countCases, findCase, findCases, getCase, listAcceptedCases, streamCases } from '../../../server/repositories/case-repository';
import { insertCases } from '../../../server/repositories/insert-cases';
import { insertWorkingUnits, listWorkingUnits } from '../../../server/repositories/working-unit-repository';
import type { WorkingUnitRecord } from '../../../shared/schemas/case';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase, plainContent } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';

const newId = randomCaseId;

async function all<T>(source: AsyncIterable<T>): Promise<T[]> {
  const items: T[] = [];
  for await (const item of source) items.push(item);
  return items;
}

describe('insertCases', () => {
  it('stores every part of a case, so that streamCases gives back equal ones in order of id', async () => {
    const { db } = testDatabase();
    const cases = smallCases(700);
    await fillDatabase(db, cases);
    const expected = [...cases].sort((a, b) => (a.id < b.id ? -1 : 1));
    expect(await all(streamCases(db))).toEqual(expected);
  });

  it('adds nothing when the same cases come again', async () => {
    const { db } = testDatabase();
    const cases = smallCases(20);
    await fillDatabase(db, cases);
    expect(await insertCases(db, cases, { newId })).toEqual([]);
    expect(await countCases(db)).toBe(20);
  });

  it('keeps equal rows of one file without ids apart, and adds none of them a second time', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const file = [1, 2].map(() => ({ id: null, status: 'submitted' as const, content: plainContent() }));
    expect(await insertCases(db, file, { newId })).toHaveLength(2);
    expect(await insertCases(db, file, { newId })).toEqual([]);
    expect(await insertCases(db, [...file, ...file.slice(0, 1)], { newId })).toHaveLength(1);
    expect(await countCases(db)).toBe(3);
  });

  it('tells apart the known content and the same content of another unit that has its own id', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1), plainCase(2)]);
    expect(await countCases(db)).toBe(2);
  });

  it('stores nothing at all where one case of a transaction names what does not exist', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const bad = plainCase(2, { causes: [{ cause: 'gremlins', designators: [] }] });
    await expect(db.$transaction((tx) => insertCases(tx, [plainCase(1), bad], { newId }))).rejects.toThrow();
    expect(await countCases(db)).toBe(0);
  });
});

describe('listAcceptedCases', () => {
  it('pages through the accepted ones only, each once', async () => {
    const { db } = testDatabase();
    const waiting = { ...plainCase(3), status: 'submitted' as const };
    await fillDatabase(db, [plainCase(1), plainCase(2), waiting, plainCase(4), plainCase(5)]);
    const first = await listAcceptedCases(db, { take: 3 });
    const second = await listAcceptedCases(db, { after: first.at(-1)?.id ?? null, take: 3 });
    expect([...first, ...second].map((c) => c.id)).toEqual([1, 2, 4, 5].map((n) => plainCase(n).id));
  });
});

describe('findCases', () => {
  it('gives back numbers to the last digit, and every list in its order', async () => {
    const { db } = testDatabase();
    const values = [0.1 + 0.2, 1 / 3, 5e-324, 1.7976931348623157e308, -4.35e-7, 2 ** 53, 0];
    const steps = values.map((value) => ({ kind: 'check' as const, check: 'supply-apart', outcome: 'low', designator: null, value, unit: 'V' as const }));
    const readings = values.map((value, i) => ({ designator: 'U1', pin: String(9 - i), state: null, value, unit: 'V' as const }));
    const record = plainCase(1, { steps: [...steps, ...plainContent().steps], readings });
    await fillDatabase(db, [record]);
    expect((await findCase(db, record.id))?.content).toStrictEqual(record.content);
  });

  it('takes more ids than a statement takes values', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1), plainCase(2, { narrative: 'Another unit.' })]);
    const ids = Array.from({ length: 40_000 }, (_, n) => plainCase(n + 1).id);
    expect((await findCases(db, ids)).map((c) => c.id)).toEqual([plainCase(1).id, plainCase(2).id].sort());
  });
});

describe('getCase', () => {
  it('refuses an id that is not there, where findCase answers null', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    expect(await findCase(db, plainCase(9).id)).toBeNull();
    await expect(getCase(db, plainCase(9).id)).rejects.toMatchObject({ code: 'case-not-found' });
  });
});

describe('insertWorkingUnits', () => {
  it('stores readings that listWorkingUnits gives back, and adds none twice', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const units: WorkingUnitRecord[] = [1, 2].map((n) => ({
      id: plainCase(n).id,
      device: n === 1 ? 'quellbrook-8-rev-b' : 'ormadic-duo',
      month: '2025-06',
      readings: [
        { designator: 'U1', pin: 'OUT', state: null, value: 5.03, unit: 'V' },
        { designator: 'U5', pin: '7', state: 'pulsing', value: null, unit: null },
      ],
    }));
    expect(await insertWorkingUnits(db, units)).toBe(2);
    expect(await insertWorkingUnits(db, units)).toBe(0);
    expect(await listWorkingUnits(db)).toEqual(units);
  });
});
