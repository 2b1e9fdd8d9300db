import { describe, expect, it } from 'vitest';
import { outcomeOfOverload, outcomeOfReading } from '../../../shared/domain/readings/outcome-of-reading';
import { convertUnit } from '../../../shared/domain/readings/units';
import type { NumberRule } from '../../../shared/schemas/vocabulary';

// A supply rail within 5 % is in tolerance: common practice, no source.
const rail: { rule: NumberRule } = {
  rule: {
    unit: 'V',
    bands: [
      { outcome: 'absent', min: null, max: 0.5 },
      { outcome: 'low', min: 0.5, max: 4.75 },
      { outcome: 'in-tolerance', min: 4.75, max: 5.25 },
      { outcome: 'high', min: 5.25, max: null },
    ],
    overload: null,
    source: 'Five per cent around 5 V: common practice, no source.',
  },
};

describe('outcomeOfReading', () => {
  it.each([
    [0, 'absent'],
    [0.5, 'low'],
    [4.6, 'low'],
    [4.749, 'low'],
    [4.75, 'in-tolerance'],
    [5.02, 'in-tolerance'],
    [5.25, 'high'],
    [9, 'high'],
    [-1, 'absent'],
  ] as const)('puts %d V into the band %s, half-open above', (value, outcome) => {
    expect(outcomeOfReading(rail, { value, unit: 'V' })).toBe(outcome);
  });

  it('takes the unit of the rule where none is written, and converts others', () => {
    expect(outcomeOfReading(rail, { value: 4.6, unit: null })).toBe('low');
    expect(outcomeOfReading(rail, { value: 4750, unit: 'mV' })).toBe('in-tolerance');
    expect(outcomeOfReading(rail, { value: 5, unit: 'Ohm' })).toBeNull();
  });

  it('meets a band that lies inside what the number was rounded from', () => {
    const narrow = {
      rule: {
        ...rail.rule,
        bands: [
          { outcome: 'off', min: null, max: 4.999 },
          { outcome: 'right', min: 4.999, max: 5.0005 },
          { outcome: 'off', min: 5.0005, max: null },
        ],
      },
    };
    expect(outcomeOfReading(narrow, { value: 5.001, unit: 'V', resolution: 0.001 })).toBe('off');
    expect(outcomeOfReading(narrow, { value: 5.01, unit: 'V', resolution: 0.1 })).toBe('right');
  });

  it('says nothing without a rule', () => {
    expect(outcomeOfReading({ rule: null }, { value: 5, unit: 'V' })).toBeNull();
    expect(outcomeOfReading(rail, { value: Number.NaN, unit: 'V' })).toBeNull();
    expect(outcomeOfOverload({ rule: null })).toBeNull();
    expect(outcomeOfOverload({ rule: { ...rail.rule, overload: 'high' } })).toBe('high');
  });
});

describe('convertUnit', () => {
  it('converts within a quantity only', () => {
    expect(convertUnit(4.7, 'kOhm', 'Ohm')).toBe(4700);
    expect(convertUnit(4750, 'mV', 'V')).toBe(4.75);
    expect(convertUnit(1, 'V', 'A')).toBeNull();
  });
});
