import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { parse } from 'csv-parse/sync';
import { describe, expect, it, onTestFinished } from 'vitest';
import { PACKAGE_FILES } from '../../../server/open-data/package-files';
import { writePackage } from '../../../server/open-data/write-package';
import { insertWorkingUnits } from '../../../server/repositories/working-unit-repository';
import { packageDescriptor } from '../../../shared/domain/open-data/package-descriptor';
import { PACKAGE_TABLES, type TableField } from '../../../shared/domain/open-data/package-tables';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';

const profile = JSON.parse(readFileSync('tests/reference/data-package/data-package-2-0.json', 'utf8')) as object;

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-package-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'package');
}

const formula = plainCase(1, { narrative: '=2+2, said the "meter",\nand then nothing' });

async function written(cases = [...smallCases(40), formula, { ...plainCase(2), status: 'submitted' as const }]) {
  const { db } = testDatabase();
  await fillDatabase(db, cases);
  await insertWorkingUnits(db, [
    {
      id: 'bbbbbbbbbbbbbbbb',
      device: 'quellbrook-8-rev-a',
      month: '2025-03',
      readings: [{ designator: 'U1', pin: '3', state: null, value: 5.02, unit: 'V' }],
    },
  ]);
  const folder = newFolder();
  expect(await writePackage(db, folder)).toBe(true);
  const descriptor = JSON.parse(readFileSync(join(folder, 'datapackage.json'), 'utf8')) as ReturnType<typeof packageDescriptor>;
  const rowsOf = (table: string) =>
    parse(readFileSync(join(folder, `${table}.csv`)), { columns: true }) as Record<string, string>[];
  return { db, folder, descriptor, rowsOf };
}

/** What Table Schema says of a cell of each type (datapackage.org, "Table Schema", field types). */
const CELLS: Record<TableField['type'], (cell: string, field: TableField) => boolean> = {
  string: () => true,
  integer: (cell) => /^[+-]?\d+$/.test(cell),
  number: (cell) => /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/.test(cell),
  boolean: (cell, field) => [...(field.trueValues ?? ['true']), ...(field.falseValues ?? ['false'])].includes(cell),
  yearmonth: (cell) => /^\d{4}-(0[1-9]|1[0-2])$/.test(cell),
};

function faultOf(field: TableField, cell: string): string | null {
  const { required, enum: values, minimum, maximum } = field.constraints ?? {};
  if (cell === '') return required ? `${field.name} is empty` : null;
  if (!CELLS[field.type](cell, field)) return `${field.name} "${cell}" is no ${field.type}`;
  if (values && !values.includes(cell)) return `${field.name} "${cell}" is not one of ${values.join(', ')}`;
  const tooFar = (minimum !== undefined && Number(cell) < minimum) || (maximum !== undefined && Number(cell) > maximum);
  return tooFar ? `${field.name} ${cell} is out of bounds` : null;
}

describe('the data package', () => {
  it('is what the published profile of Data Package 2.0 asks for, with and without sizes', async () => {
    const { descriptor } = await written();
    const ajv = new Ajv({ strict: false, allErrors: true });
    addFormats.default(ajv);
    // A hint of the profile to editors, not a format to check.
    ajv.addFormat('textarea', true);
    const validate = ajv.compile(profile);
    for (const document of [descriptor, packageDescriptor()]) {
      validate(document);
      expect(validate.errors ?? []).toEqual([]);
    }
    validate({ ...descriptor, resources: [{ name: 'nothing to read' }] });
    expect(validate.errors).not.toBeNull();
  });

  it('describes every file that is there by size and checksum, and no other', async () => {
    const { folder, descriptor } = await written();
    expect(descriptor.resources.map((resource) => resource.path).sort()).toEqual([...PACKAGE_FILES.keys()].sort());
    for (const resource of descriptor.resources as { path: string; bytes?: number; hash?: string }[]) {
      const content = readFileSync(join(folder, resource.path));
      expect(resource.bytes).toBe(content.length);
      expect(resource.hash).toBe(`sha256:${createHash('sha256').update(content).digest('hex')}`);
    }
    expect(existsSync(join(folder, 'data-dictionary.md'))).toBe(true);
  });

  it('has tables whose cells are what their columns say, with keys that are unique and that lead somewhere', async () => {
    const { rowsOf } = await written();
    const faults: string[] = [];
    for (const table of PACKAGE_TABLES) {
      const rows = rowsOf(table.name);
      expect(rows.length, table.name).toBeGreaterThan(0);
      expect(Object.keys(rows[0] ?? {})).toEqual(table.fields.map((field) => field.name));
      for (const row of rows) faults.push(...table.fields.flatMap((field) => faultOf(field, row[field.name] ?? '') ?? []));
      const keys = rows.map((row) => (table.primaryKey ?? []).map((column) => row[column]).join(' '));
      if (table.primaryKey) expect(new Set(keys).size, table.name).toBe(keys.length);
      for (const { fields, reference } of table.foreignKeys ?? []) {
        const known = new Set(rowsOf(reference.resource).map((row) => row[reference.fields[0] ?? '']));
        faults.push(...rows.map((row) => row[fields[0] ?? ''] ?? '').filter((value) => value !== '' && !known.has(value)));
      }
    }
    expect(faults).toEqual([]);
  });

  it('holds accepted cases alone, whole on a line each, and guards text that a spreadsheet would reckon', async () => {
    const { folder, rowsOf } = await written();
    const lines = readFileSync(join(folder, 'cases.jsonl'), 'utf8').trim().split('\n');
    const records = lines.map((line) => JSON.parse(line) as { id: string });
    expect(records).toHaveLength(41);
    expect(records).toContainEqual(formula);
    expect(rowsOf('cases')).toHaveLength(41);
    expect(rowsOf('cases').find((row) => row.id === formula.id)?.narrative).toBe(`'${formula.content.narrative}`);
    expect(rowsOf('case-causes').length).toBe(37);
  });

  it('is whole, with tables of heads alone, where nothing is stored yet', async () => {
    const { db } = testDatabase();
    const folder = newFolder();
    expect(await writePackage(db, folder)).toBe(true);
    for (const table of PACKAGE_TABLES) {
      const text = readFileSync(join(folder, `${table.name}.csv`), 'utf8');
      expect(text).toBe(`${table.fields.map((field) => field.name).join(',')}\n`);
    }
  });

  it('leaves a folder alone that holds something', async () => {
    const { db, folder } = await written([]);
    expect(await writePackage(db, folder)).toBe(false);
  });

  it('reads no further ahead than whoever takes it', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(1200));
    let reads = 0;
    const counting = new Proxy(db, {
      get: (target, key) => {
        // A page is two: its cases, and the words that were merged. The last page is empty, and one.
        if (key === '$queryRaw') reads += 1;
        return Reflect.get(target, key) as unknown;
      },
    });
    const pieces = PACKAGE_FILES.get('cases.jsonl')?.pieces(counting)[Symbol.asyncIterator]();
    await pieces?.next();
    expect(reads).toBe(2);
    while ((await pieces?.next())?.done === false);
    expect(reads).toBe(3 * 2 + 1);
  });
});
