import { describe, expect, it } from 'vitest';
import type { Reading, WorkingUnitRecord } from '../../../shared/schemas/case';
import { findUsualPin, usualReadings } from '../../../shared/domain/readings/usual-readings';

const id = (n: number) => `aaaaaaaaaaaaaa${'abcdefghijklmnop'[n >> 4]}${'abcdefghijklmnop'[n & 15]}`;
const unit = (n: number, readings: Reading[]): WorkingUnitRecord => ({
  id: id(n),
  device: 'quellbrook-8-rev-a',
  month: '2025-03',
  readings,
});
const state = (designator: string, pin: string, value: Reading['state']): Reading => ({
  designator,
  pin,
  state: value,
  value: null,
  unit: null,
});
const number = (designator: string, pin: string, value: number, of: Reading['unit'] = 'V'): Reading => ({
  designator,
  pin,
  state: null,
  value,
  unit: of,
});

describe('usualReadings', () => {
  it('counts the states at each pin, unit by unit, noughts included', () => {
    const parts = usualReadings([
      unit(0, [state('U1', '6', 'pulsing'), state('U1', '7', 'high')]),
      unit(1, [state('U1', '6', 'pulsing')]),
      unit(2, [state('U1', '6', 'low'), state('U2', '1', 'high')]),
    ]);
    expect(parts.map(({ designator, units }) => [designator, units])).toEqual([
      ['U1', 3],
      ['U2', 1],
    ]);
    expect(findUsualPin(parts, 'U1', '6')).toEqual({
      pin: '6',
      units: 3,
      states: [
        { state: 'high', count: 0 },
        { state: 'low', count: 1 },
        { state: 'pulsing', count: 2 },
        { state: 'floating', count: 0 },
      ],
      numbers: [],
    });
    expect(findUsualPin(parts, 'U1', '40')).toBeNull();
  });

  it('gives the tolerance interval of Berthouex & Brown, Table 21.1: k = 5.08 for five readings, 95 % of units, 95 % sure', () => {
    // Mean 5, standard deviation 0.1: 4.9, 4.9, 5, 5.1, 5.1. Half a step of the resolution (0.1) is added on each side.
    const parts = usualReadings([4.9, 4.9, 5, 5.1, 5.1].map((value, n) => unit(n, [number('U1', '40', value)])));
    const [numbers] = findUsualPin(parts, 'U1', '40')?.numbers ?? [];
    expect(numbers?.resolution).toBeCloseTo(0.1, 12);
    expect(numbers?.usual?.centre).toBe(5);
    expect(numbers?.usual?.high).toBeCloseTo(5 + 5.08 * 0.1 + 0.05, 2);
    expect(numbers?.usual?.low).toBeCloseTo(5 - 5.08 * 0.1 - 0.05, 2);
  });

  it('brings millivolts and volts of one pin together, and keeps what measures something else apart', () => {
    const parts = usualReadings([
      unit(0, [number('U1', '1', 3420, 'mV'), number('U1', '1', 10, 'kOhm')]),
      unit(1, [number('U1', '1', 3.4)]),
      unit(2, [number('U1', '1', 3.38)]),
    ]);
    const pin = findUsualPin(parts, 'U1', '1');
    expect(pin?.numbers.map(({ unit: of, values }) => [of, values])).toEqual([
      ['V', [3.42, 3.4, 3.38]],
      ['kOhm', [10]],
    ]);
    expect(pin?.numbers[0]?.resolution).toBeCloseTo(0.001, 12);
    expect(pin?.numbers[1]?.usual).toBeNull();
  });

  it('orders parts and pins as people do, and says nothing of no units', () => {
    const parts = usualReadings([unit(0, [state('U10', '10', 'high'), state('U2', '9', 'low'), state('U10', '9', 'low')])]);
    expect(parts.map((part) => part.designator)).toEqual(['U2', 'U10']);
    expect(parts[1]?.pins.map((pin) => pin.pin)).toEqual(['9', '10']);
    expect(usualReadings([])).toEqual([]);
  });
});
