import type { BoardPart } from '../../schemas/device';

/** Where a pin stands in the drawing of its part, in rows and columns from the upper left, seen from above. */
export type PinPlace = { pin: number; row: number; column: number; side: 'left' | 'right' | 'top' | 'bottom' };

export type PackageLayout = { rows: number; columns: number; pins: PinPlace[]; body: 'dual' | 'single' | 'quad' | 'double-row' };

const QUAD = ['QFP', 'PLCC'];
const DUAL = ['DIP', 'SOIC'];

/**
 * How a part's pins lie, in the order of their numbers. Dual in line: down the left side, up the right (JEDEC MS-001, counter-clockwise
 * from the notch). Four sides: counter-clockwise from the upper left corner (JEDEC MS-026); a chip carrier (JEDEC MS-018)
 * starts in the middle of the upper side. Headers with an even number of ten pins or more: two columns, odd numbers on
 * the left; all others in one line (both common practice, no source).
 */
export function packageLayout({ package: kind, pins }: Pick<BoardPart, 'package' | 'pins'>): PackageLayout {
  if (DUAL.includes(kind) && pins % 2 === 0) return dual(pins);
  if (QUAD.includes(kind) && pins % 4 === 0 && pins > 4) return quad(pins, kind === 'PLCC' ? Math.floor(pins / 8) : 0);
  if (kind === 'connector' && pins % 2 === 0 && pins >= 10) return doubleRow(pins);
  const places = numbers(pins).map((pin): PinPlace => ({ pin, row: pin - 1, column: 0, side: 'left' }));
  return { rows: pins, columns: 1, pins: places, body: 'single' };
}

const numbers = (pins: number) => Array.from({ length: pins }, (_, i) => i + 1);

function dual(pins: number): PackageLayout {
  const rows = pins / 2;
  const places = numbers(pins).map(
    (pin): PinPlace =>
      pin <= rows ? { pin, row: pin - 1, column: 0, side: 'left' } : { pin, row: pins - pin, column: 1, side: 'right' },
  );
  return { rows, columns: 2, pins: places, body: 'dual' };
}

function doubleRow(pins: number): PackageLayout {
  const places = numbers(pins).map(
    (pin): PinPlace => ({ pin, row: Math.floor((pin - 1) / 2), column: (pin - 1) % 2, side: pin % 2 === 1 ? 'left' : 'right' }),
  );
  return { rows: pins / 2, columns: 2, pins: places, body: 'double-row' };
}

/** @param shift how many places clockwise of the upper left corner, along the upper side, pin 1 stands */
function quad(pins: number, shift: number): PackageLayout {
  const side = pins / 4;
  const place = (step: number): Omit<PinPlace, 'pin'> => {
    const along = step % side;
    if (step < side) return { row: along + 1, column: 0, side: 'left' };
    if (step < 2 * side) return { row: side + 1, column: along + 1, side: 'bottom' };
    if (step < 3 * side) return { row: side - along, column: side + 1, side: 'right' };
    return { row: 0, column: side - along, side: 'top' };
  };
  const places = numbers(pins).map((pin): PinPlace => ({ pin, ...place((pin - 1 - (shift === 0 ? 0 : shift + 1) + pins) % pins) }));
  return { rows: side + 2, columns: side + 2, pins: places, body: 'quad' };
}

/** The pin next to another in a direction, the nearest in that row or column; the same where there is none. */
export function neighbour(layout: PackageLayout, from: number, towards: 'up' | 'down' | 'left' | 'right'): number {
  const here = layout.pins.find(({ pin }) => pin === from);
  if (!here) return from;
  const sign = towards === 'up' || towards === 'left' ? -1 : 1;
  const vertical = towards === 'up' || towards === 'down';
  const ahead = layout.pins
    .map((place) => {
      const along = (vertical ? place.row - here.row : place.column - here.column) * sign;
      const aside = Math.abs(vertical ? place.column - here.column : place.row - here.row);
      return { pin: place.pin, along, aside };
    })
    .filter(({ along }) => along > 0)
    .sort((a, b) => a.aside * 3 + a.along - (b.aside * 3 + b.along));
  return ahead[0]?.pin ?? from;
}
