import { describe, expect, it } from 'vitest';
import { parseReadingAt } from '../../../shared/domain/readings/parse-reading';

const read = (text: string, at = 0) => {
  const reading = parseReadingAt(text, at);
  return reading === null ? null : { value: reading.value, unit: reading.unit };
};

describe('parseReadingAt', () => {
  it.each([
    ['4.6 V', 4.6, 'V'],
    ['5v', 5, 'V'],
    ['+5 volts', 5, 'V'],
    ['-12V', -12, 'V'],
    ['680 mV', 680, 'mV'],
    ['3.58MHz', 3.58, 'MHz'],
    ['4,6 V', 4.6, 'V'],
    ['.5 ohm', 0.5, 'Ohm'],
    ['10k', 10, 'kOhm'],
    ['4k7', 4.7, 'kOhm'],
    ['4V6', 4.6, 'V'],
    ['0R22', 0.22, 'Ohm'],
    ['1.2 amps', 1.2, 'A'],
    ['15.6 kHz', 15.6, 'kHz'],
    ['95 °C', 95, 'Cel'],
    ['470uF', 470, 'uF'],
    ['200ms', 200, 'ms'],
  ] as const)('reads %s', (text, value, unit) => {
    expect(read(text)).toEqual({ value, unit });
  });

  it('leaves the unit open where none is written', () => {
    expect(read('0')).toEqual({ value: 0, unit: null });
    expect(read('4, 6')).toEqual({ value: 4, unit: null });
  });

  it('knows a meter that shows overload', () => {
    expect(parseReadingAt('OL', 0)).toMatchObject({ overload: true, value: null, end: 2 });
    expect(parseReadingAt('o.l. on the meter', 0)).toMatchObject({ overload: true });
  });

  it('is no reading inside a part number', () => {
    expect(parseReadingAt('74ls245', 0)).toBeNull();
    expect(parseReadingAt('grey', 0)).toBeNull();
  });

  it('tells how finely a number is written', () => {
    expect(parseReadingAt('3.58 MHz', 0)?.resolution).toBeCloseTo(0.01, 12);
    expect(parseReadingAt('12 V', 0)?.resolution).toBe(1);
  });
});
