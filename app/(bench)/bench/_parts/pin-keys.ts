import { parseReadingAt } from '../../../../shared/domain/readings/parse-reading';
import { neighbour, type PackageLayout } from '../../../../shared/domain/readings/package-layout';
import type { Reading } from '../../../../shared/schemas/case';
import type { LogicState } from '../../../../shared/schemas/terms';

/** The keys of the grid, one for each state. */
export const STATE_KEYS: Record<string, LogicState> = { h: 'high', l: 'low', p: 'pulsing', f: 'floating' };

const ARROWS: Record<string, Parameters<typeof neighbour>[2]> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/** What a key does at a pin: a state read, a number begun, another pin, the pin cleared; null for any other key. */
export type PinAction =
  | { kind: 'state'; state: LogicState }
  | { kind: 'number'; text: string }
  | { kind: 'go'; pin: number }
  | { kind: 'clear' };

/** The action of a key, by its value as `KeyboardEvent.key` has it. */
export function pinAction(layout: PackageLayout, at: number, key: string): PinAction | null {
  const state = STATE_KEYS[key.toLowerCase()];
  if (state) return { kind: 'state', state };
  if (/^[0-9.+-]$/.test(key) || key.toLowerCase() === 'o') return { kind: 'number', text: key };
  const arrow = ARROWS[key];
  if (arrow) return { kind: 'go', pin: neighbour(layout, at, arrow) };
  if (key === 'Enter') return { kind: 'go', pin: nextPin(layout, at) };
  if (key === 'Home') return { kind: 'go', pin: 1 };
  if (key === 'End') return { kind: 'go', pin: layout.pins.length };
  return key === 'Backspace' || key === 'Delete' ? { kind: 'clear' } : null;
}

/** The pin after this one by number; the last stays. */
export function nextPin(layout: PackageLayout, at: number): number {
  return Math.min(at + 1, layout.pins.length);
}

/**
 * A number typed at a pin: `4.61V`, `3.58MHz`, `680 mV`; without a unit, volts. An overload on a pin is an open
 * circuit: floating. Null where it cannot be read.
 */
export function readPin(text: string): Pick<Reading, 'state' | 'value' | 'unit'> | null {
  const typed = text.trim();
  const read = parseReadingAt(typed, 0);
  if (read === null || read.end !== typed.length) return null;
  if (read.overload) return { state: 'floating', value: null, unit: null };
  return read.value === null ? null : { state: null, value: read.value, unit: read.unit ?? 'V' };
}
