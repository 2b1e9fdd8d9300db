import type { WorkingUnitRecord } from '../../schemas/case';
import type { Board } from '../../schemas/device';
import type { BoardReadings } from '../../schemas/device-view';
import { usualReadings } from '../readings/usual-readings';

/** The usual readings of a board with the names of its pins, from its working units; parts in the order of the part list. */
export function boardReadings(board: Board, label: string, units: readonly WorkingUnitRecord[]): BoardReadings {
  const order = new Map(board.parts.map((part, at) => [part.designator, at]));
  const parts = usualReadings(units).map(({ designator, units: read, pins }) => {
    const names = board.parts.find((part) => part.designator === designator)?.pinNames ?? [];
    return {
      designator,
      units: read,
      pins: pins.map(({ numbers, ...pin }) => ({
        ...pin,
        name: names[Number(pin.pin) - 1] ?? null,
        numbers: numbers.map(({ unit, values, usual }) => ({ unit, readings: values.length, usual })),
      })),
    };
  });
  const placeOf = (designator: string) => order.get(designator) ?? order.size;
  return {
    board: { id: board.slug, label },
    units: units.length,
    parts: parts.sort((a, b) => placeOf(a.designator) - placeOf(b.designator)),
  };
}
