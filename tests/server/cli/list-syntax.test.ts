import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CSV_COLUMNS, csvCells, rowFromCells } from '../../../server/cli/case-files/csv-cells';
import { type CaseContent, caseContentSchema, FIX_RESULTS } from '../../../shared/schemas/case';
import { LOGIC_STATES, UNITS } from '../../../shared/schemas/terms';
import { plainCase, plainContent } from '../fixtures/plain-case';

const slug = fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,3}$/u);
const designator = fc.stringMatching(/^[A-Z]{1,4}[0-9]{1,4}[A-Z]?$/u);
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (Object.is(n, -0) ? 0 : n));
const measured = fc.oneof(
  fc.record({ value: number, unit: fc.constantFrom(...UNITS) }),
  fc.constant({ value: null, unit: null }),
);

const check = fc
  .tuple(fc.record({ check: slug, outcome: slug, designator: orNull(designator) }), measured)
  .map(([step, reading]) => ({ kind: 'check' as const, ...step, ...reading }));
const fix = fc.record({
  kind: fc.constant('fix' as const),
  fixes: fc.array(fc.record({ fix: slug, designator: orNull(designator) }), { minLength: 1, maxLength: 4 }),
  result: fc.constantFrom(...FIX_RESULTS),
});
const pin = fc.oneof(fc.string({ minLength: 1, maxLength: 5 }), fc.constantFrom('%', '%41', 'A\u00a0B', ' ', '1;2', 'D0=Q', '.'));
const reading = fc.oneof(
  fc.record({ designator, pin, state: fc.constant(null), value: number, unit: fc.constantFrom(...UNITS) }),
  fc.record({ designator, pin, state: fc.constantFrom(...LOGIC_STATES), value: fc.constant(null), unit: fc.constant(null) }),
);

const content: fc.Arbitrary<CaseContent> = fc
  .record({
    symptoms: fc.array(fc.record({ symptom: slug, present: fc.boolean() }), { maxLength: 5 }),
    symptomsComplete: fc.boolean(),
    steps: fc.array(fc.oneof(check, fix), { maxLength: 6 }),
    readings: fc.array(reading, { maxLength: 5 }),
    causes: fc.array(fc.record({ cause: slug, designators: fc.array(designator, { maxLength: 3 }) }), { maxLength: 3 }),
    afterRepairChecks: fc.array(slug, { maxLength: 3 }),
    soakMinutes: orNull(fc.nat({ max: 5000 })),
    narrative: fc.string({ unit: 'binary', maxLength: 60 }),
  })
  .map((fields) => plainContent({ ...fields, provedByStep: null }));

describe('rowFromCells', () => {
  it('reads back any case that csvCells wrote', () => {
    fc.assert(
      fc.property(content, (original) => {
        const { row, problems } = rowFromCells(csvCells({ ...plainCase(1), content: original }));
        expect(problems).toEqual([]);
        const { id, ...rest } = row;
        expect(id).toBe(plainCase(1).id);
        expect(caseContentSchema.parse(rest)).toEqual(original);
      }),
      { numRuns: 300, seed: 2 },
    );
  });

  it.each([
    ['symptoms', 'grey-screen=maybe'],
    ['steps', 'clock-at-processor=pulsing'],
    ['steps', 'check clock-at-processor'],
    ['steps', 'check clock-at-processor=pulsing lots V'],
    ['steps', 'fix replace-crystal'],
    ['readings', 'U1=5 V'],
    ['readings', 'U1.3=five V'],
    ['readings', 'U1.%FF=5 V'],
    ['causes', 'crystal@Y1@Y2'],
    ['symptomsComplete', 'perhaps'],
  ])('names the column of what it cannot read: %s "%s"', (column, text) => {
    const cells = { ...csvCells(plainCase(1)), [column]: text };
    expect(rowFromCells(cells).problems.map((p) => p.field)).toEqual([column]);
  });
});

describe('csvCells', () => {
  it('keeps a spreadsheet from taking any cell for a formula', () => {
    for (const start of ['=', '+', '-', '@', '\t', '\r']) {
      const cells = csvCells(plainCase(1, { narrative: `${start}1+1` }));
      expect(CSV_COLUMNS.map((column) => cells[column]).filter((cell) => /^[=+\-@\t\r]/u.test(cell))).toEqual([]);
    }
  });
});
