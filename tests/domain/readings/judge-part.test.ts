import { describe, expect, it } from 'vitest';
import { judgePart, judgePin } from '../../../shared/domain/readings/judge-part';
import { levelOf, logicFamilyOf } from '../../../shared/domain/readings/logic-family';
import { usualReadings } from '../../../shared/domain/readings/usual-readings';
import type { Reading } from '../../../shared/schemas/case';
import { boardPartSchema } from '../../../shared/schemas/device';
import type { LogicState } from '../../../shared/schemas/terms';

const buffer = boardPartSchema.parse({
  designator: 'U11',
  role: 'bus-buffer',
  partNumber: '74LS08',
  package: 'DIP',
  pins: 14,
  pinNames: '1A 1B 1Y 2A 2B 2Y GND 3Y 3A 3B 4Y 4A 4B VCC'.split(' '),
});
const state = (pin: number, s: LogicState): Reading => ({ designator: 'U11', pin: String(pin), state: s, value: null, unit: null });
const volts = (pin: number, value: number): Reading => ({ designator: 'U11', pin: String(pin), state: null, value, unit: 'V' });
const units = (count: number, readings: Reading[]) =>
  Array.from({ length: count }, (_, i) => ({ id: `unit${i}`.padEnd(16, 'a'), device: 'quellbrook-8-rev-a', month: '2026-01', readings }));
const known = (working: Reading[], count: number, faulty: Reading[] = [], faults = 0) => ({
  working: usualReadings(units(count, working))[0] ?? null,
  faulty: usualReadings(units(faults, faulty))[0] ?? null,
});

describe('levels of a logic family', () => {
  // Data sheet of the 54/74LS00 (FAST and LS TTL data): VIH at least 2.0 V, VIL at most 0.8 V, VCC 4.75 to 5.25 V.
  // JEDEC Standard 7-A: 74HC at 4.5 V takes 3.15 V for high and 1.35 V for low, 0.7 and 0.3 of the supply.
  it.each([
    ['74LS08', 2.0, 'high'],
    ['74LS08', 1.99, 'between'],
    ['74LS08', 0.8, 'low'],
    ['74LS08', 0.81, 'between'],
    ['74HC08', 3.49, 'between'],
    ['74HC08', 3.5, 'high'],
    ['74HCT08', 2.0, 'high'],
    ['4066', 1.5, 'low'],
  ] as const)('of %s takes %d V for %s', (part, value, level) => {
    const family = logicFamilyOf(part);
    expect(family && levelOf(family, value)).toBe(level);
  });

  it('are not guessed: memory 4164 is no 4000-series CMOS, a timer or an unnamed part has none', () => {
    expect(logicFamilyOf('4164')?.name).toBe('TTL-compatible memory');
    expect(logicFamilyOf('555')).toBeNull();
    expect(logicFamilyOf(null)).toBeNull();
  });
});

describe('judgePin', () => {
  it('never calls a pin usual that nobody, or one working unit, has read', () => {
    expect(judgePin(buffer, known([], 0), state(1, 'high'))).toMatchObject({ verdict: 'not-enough', same: 0, of: 0, weight: 0 });
    expect(judgePin(buffer, known([state(1, 'high')], 1), state(1, 'high')).verdict).toBe('not-enough');
  });

  it('counts states of working units, and voltages that mean one', () => {
    const mixed = { working: usualReadings([...units(9, [state(1, 'high')]), ...units(3, [volts(1, 4.2)])])[0] ?? null, faulty: null };
    expect(judgePin(buffer, mixed, state(1, 'high'))).toMatchObject({ verdict: 'usual', same: 12, of: 12 });
    expect(judgePin(buffer, mixed, state(1, 'floating'))).toMatchObject({ verdict: 'unusual', same: 0, of: 12 });
  });

  it('holds a supply against its published tolerance, with the source, though working units are unknown', () => {
    const judged = judgePin(buffer, known([], 0), volts(14, 4.61));
    expect(judged).toMatchObject({ verdict: 'unusual', published: { within: false } });
    expect(judged.published?.words).toContain('4.75 to 5.25 V');
    expect(judged.published?.source).toMatch(/data sheet/i);
    // Within the tolerance, but no working unit was read: not "usual".
    expect(judgePin(buffer, known([], 0), volts(14, 5)).verdict).toBe('not-enough');
  });

  it('gives numbers their tolerance interval', () => {
    const working = [4.98, 5.0, 5.01, 5.02, 5.03, 4.99].map((v) => units(1, [volts(14, v)])[0]!);
    const judged = judgePin(buffer, { working: usualReadings(working)[0] ?? null, faulty: null }, volts(14, 5.01));
    expect(judged.verdict).toBe('usual');
    expect(judged.interval?.readings).toBe(6);
    // Odeh & Owen 1980, Table 3: k = 4.414 for n = 6, coverage 0.95, confidence 0.95; s = 0.01871.
    expect((judged.interval?.high ?? 0) - (judged.interval?.low ?? 0)).toBeCloseTo(2 * (4.414 * 0.018708 + 0.005), 3);
  });
});

describe('judgePart', () => {
  it('names the pins that drive the score: those that only faulty parts show', () => {
    const working = [state(1, 'pulsing'), state(3, 'pulsing'), state(14, 'high')];
    const faulty = [state(1, 'pulsing'), state(3, 'low'), state(14, 'high')];
    const judged = judgePart(buffer, known(working, 20, faulty, 8), faulty);
    expect(judged.score).toBeGreaterThan(5);
    expect(judged.drivers[0]).toBe('3');
    expect(judgePart(buffer, known(working, 20, faulty, 8), working).score).toBeLessThan(0);
    expect(judgePart(buffer, known(working, 20, faulty, 8), []).score).toBe(0);
  });
});
