import type { Unit } from '../../schemas/terms';

/** What a unit measures; only units of one quantity can be converted into each other. */
export type Quantity = 'voltage' | 'resistance' | 'frequency' | 'current' | 'capacitance' | 'temperature' | 'time';

/** UCUM unit → quantity and factor to the quantity's base unit (V, Ohm, Hz, A, F, Cel, s). */
const UNIT_FACTORS: Record<Unit, { quantity: Quantity; factor: number }> = {
  V: { quantity: 'voltage', factor: 1 },
  mV: { quantity: 'voltage', factor: 1e-3 },
  Ohm: { quantity: 'resistance', factor: 1 },
  kOhm: { quantity: 'resistance', factor: 1e3 },
  MOhm: { quantity: 'resistance', factor: 1e6 },
  Hz: { quantity: 'frequency', factor: 1 },
  kHz: { quantity: 'frequency', factor: 1e3 },
  MHz: { quantity: 'frequency', factor: 1e6 },
  mA: { quantity: 'current', factor: 1e-3 },
  A: { quantity: 'current', factor: 1 },
  uF: { quantity: 'capacitance', factor: 1e-6 },
  nF: { quantity: 'capacitance', factor: 1e-9 },
  Cel: { quantity: 'temperature', factor: 1 },
  ms: { quantity: 'time', factor: 1e-3 },
  s: { quantity: 'time', factor: 1 },
};

/** The quantity that a unit measures. */
export function quantityOf(unit: Unit): Quantity {
  return UNIT_FACTORS[unit].quantity;
}

/**
 * Converts `value` from one UCUM unit to another of the same quantity.
 * Returns null where the units measure different things. The result is rounded to 12 significant
 * digits so that 4750 mV is 4.75 V exactly and falls on the right side of a band's limit.
 */
export function convertUnit(value: number, from: Unit, to: Unit): number | null {
  const a = UNIT_FACTORS[from];
  const b = UNIT_FACTORS[to];
  if (a.quantity !== b.quantity) return null;
  if (from === to) return value;
  return Number(((value * a.factor) / b.factor).toPrecision(12));
}
