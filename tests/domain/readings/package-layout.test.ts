import { describe, expect, it } from 'vitest';
import { neighbour, packageLayout } from '../../../shared/domain/readings/package-layout';
import { PACKAGES } from '../../../shared/schemas/device';

const at = (kind: (typeof PACKAGES)[number], pins: number, pin: number) =>
  packageLayout({ package: kind, pins }).pins.find((place) => place.pin === pin);

describe('packageLayout', () => {
  // JEDEC MS-001: pins of a dual in-line package are numbered counter-clockwise from the upper left, seen from above.
  it('of a DIP goes down the left side and up the right', () => {
    expect(at('DIP', 40, 1)).toMatchObject({ row: 0, column: 0 });
    expect(at('DIP', 40, 20)).toMatchObject({ row: 19, column: 0 });
    expect(at('DIP', 40, 21)).toMatchObject({ row: 19, column: 1 });
    expect(at('DIP', 40, 40)).toMatchObject({ row: 0, column: 1 });
  });

  // JEDEC MS-026: a quad flat pack is numbered counter-clockwise from the upper left corner.
  it('of a QFP goes around counter-clockwise from the upper left corner', () => {
    expect(at('QFP', 64, 1)).toMatchObject({ side: 'left', row: 1 });
    expect(at('QFP', 64, 17)).toMatchObject({ side: 'bottom', column: 1 });
    expect(at('QFP', 64, 33)).toMatchObject({ side: 'right', row: 16 });
    expect(at('QFP', 64, 49)).toMatchObject({ side: 'top', column: 16 });
    expect(at('QFP', 64, 64)).toMatchObject({ side: 'top', column: 1 });
  });

  // JEDEC MS-018: pin 1 of a plastic leaded chip carrier is the middle one of the upper side; of 44 pins, 7 and 17 flank the left side.
  it('of a chip carrier starts in the middle of the upper side', () => {
    expect(at('PLCC', 44, 1)).toMatchObject({ side: 'top', column: 6 });
    expect(at('PLCC', 44, 6)).toMatchObject({ side: 'top', column: 1 });
    expect(at('PLCC', 44, 7)).toMatchObject({ side: 'left', row: 1 });
    expect(at('PLCC', 44, 44)).toMatchObject({ side: 'top', column: 7 });
  });

  it.each(PACKAGES)('gives every pin of a %s a place of its own', (kind) => {
    for (const pins of [1, 2, 3, 8, 9, 16, 40, 64]) {
      const layout = packageLayout({ package: kind, pins });
      expect(new Set(layout.pins.map(({ row, column }) => `${row} ${column}`)).size).toBe(pins);
      expect(layout.pins.map(({ pin }) => pin)).toEqual(Array.from({ length: pins }, (_, i) => i + 1));
      expect(layout.pins.every(({ row, column }) => row < layout.rows && column < layout.columns)).toBe(true);
    }
  });
});

describe('neighbour', () => {
  const dip = packageLayout({ package: 'DIP', pins: 16 });
  it('goes to the pin across, above and below, and stays at the edge', () => {
    expect(neighbour(dip, 1, 'right')).toBe(16);
    expect(neighbour(dip, 16, 'left')).toBe(1);
    expect(neighbour(dip, 9, 'up')).toBe(10);
    expect(neighbour(dip, 1, 'up')).toBe(1);
    expect(neighbour(dip, 3, 'down')).toBe(4);
  });
});
