import type { Reading } from '../../schemas/case';
import type { DevicePlace } from '../casebook/vocabulary-words';

/**
 * What is wrong with readings contributed as those of a working unit, in sentences that say what to do; empty where all
 * is well. They belong to a board, to parts and pins that it has, and each pin is read once.
 */
export function checkWorkingUnit(place: DevicePlace | undefined, readings: readonly Reading[]): string[] {
  if (!place?.board) return ['Choose the board revision: readings of a working unit belong to one board.'];
  const parts = new Map(place.board.parts.map((part) => [part.designator, part]));
  const problems = new Set<string>();
  const seen = new Set<string>();
  for (const { designator, pin } of readings) {
    const part = parts.get(designator);
    const at = `${designator} pin ${pin}`;
    if (!part) problems.add(`There is no ${designator} on ${place.label}. Remove its readings.`);
    else if (!/^\d+$/.test(pin) || Number(pin) < 1 || Number(pin) > part.pins) {
      problems.add(`${designator} has no pin ${pin}. Remove that reading.`);
    }
    if (seen.has(at)) problems.add(`${at} is read twice. Keep one of the readings.`);
    seen.add(at);
  }
  return [...problems];
}
