import { LOGIC_STATES, type LogicState, type Unit } from '../../schemas/terms';
import { readNumber } from './read-number';

/** What was typed at a pin: a state, or a number with its unit; `reason` says why it cannot be read. */
export type TypedPin = { state: LogicState | null; value: number | null; unit: Unit | null; reason: string | null };

const HOW = 'Write high, low, pulsing or floating, or a number with its unit, such as 4.62 V.';

/** Reads a state by its word or its first letter, and otherwise a number; a bare number is refused. */
export function readPin(typed: string): TypedPin {
  const text = typed.trim();
  const nothing = { state: null, value: null, unit: null };
  if (text === '') return { ...nothing, reason: `${HOW} Or remove this row.` };
  const state = LOGIC_STATES.find((word) => word === text.toLowerCase() || word.charAt(0) === text.toLowerCase());
  if (state !== undefined) return { ...nothing, state, reason: null };
  const { value, unit, reason } = readNumber(text, null);
  if (value === null || unit === null) return { ...nothing, reason: reason?.startsWith('Write the unit') ? reason : HOW };
  return { state: null, value, unit, reason: null };
}
