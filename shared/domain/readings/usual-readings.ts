import type { Reading, WorkingUnitRecord } from '../../schemas/case';
import { LOGIC_STATES, type LogicState, type Unit } from '../../schemas/terms';
import { numberUsual } from '../../stats/decide/number-usual';
import { convertUnit, quantityOf } from './units';

/** Numbers read at one pin of working units, all in the unit that most of them were noted in. */
export type UsualNumbers = {
  unit: Unit;
  /** One per reading, in the order of the units. */
  values: number[];
  /** Smallest step that the values were noted in: 0.01 where the finest is 4.97. */
  resolution: number;
  /** Median, and the tolerance interval of `numberUsual`; null where there are fewer than three readings. */
  usual: { centre: number; low: number; high: number; readings: number; setAside: number } | null;
};

/** What working units of one board show at one pin. */
export type UsualPin = {
  pin: string;
  /** Working units that were read here, as a state or as a number. */
  units: number;
  /** How often each logic state was noted, in the order of `LOGIC_STATES`, noughts included. */
  states: { state: LogicState; count: number }[];
  /** One entry per quantity, the one read most often first; empty where no number was noted. */
  numbers: UsualNumbers[];
};

export type UsualPart = {
  designator: string;
  /** Working units of which at least one pin of this part was read. */
  units: number;
  pins: UsualPin[];
};

/**
 * What is usual, part by part and pin by pin, from readings of working units of one board (the caller sees to that).
 * Parts stand by designator, pins by number. A unit read twice at the same pin counts as one unit and two readings. States
 * and numbers are kept apart: a voltage is not turned into a state, as no logic family is known.
 */
export function usualReadings(units: readonly WorkingUnitRecord[]): UsualPart[] {
  const parts = new Map<string, Map<string, Gathered>>();
  for (const unit of units) {
    for (const reading of unit.readings) {
      const pins = entry(parts, reading.designator, () => new Map<string, Gathered>());
      gather(entry(pins, reading.pin, emptyPin), reading, unit.id);
    }
  }
  return [...parts]
    .map(([designator, pins]) => ({
      designator,
      units: new Set([...pins.values()].flatMap((pin) => [...pin.units])).size,
      pins: [...pins].map(([pin, gathered]) => usualPin(pin, gathered)).sort((a, b) => inOrder(a.pin, b.pin)),
    }))
    .sort((a, b) => inOrder(a.designator, b.designator));
}

/** What is usual at one pin; null where no working unit was read there. */
export function findUsualPin(parts: readonly UsualPart[], designator: string, pin: string): UsualPin | null {
  return parts.find((part) => part.designator === designator)?.pins.find((p) => p.pin === pin) ?? null;
}

type Gathered = { units: Set<string>; states: Map<LogicState, number>; numbers: { value: number; unit: Unit }[] };

const emptyPin = (): Gathered => ({ units: new Set(), states: new Map(), numbers: [] });

function gather(at: Gathered, { state, value, unit }: Reading, unitId: string): void {
  at.units.add(unitId);
  if (state !== null) at.states.set(state, (at.states.get(state) ?? 0) + 1);
  if (value !== null && unit !== null) at.numbers.push({ value, unit });
}

function usualPin(pin: string, { units, states, numbers }: Gathered): UsualPin {
  const byQuantity = groups(numbers, (number) => quantityOf(number.unit));
  return {
    pin,
    units: units.size,
    states: LOGIC_STATES.map((state) => ({ state, count: states.get(state) ?? 0 })),
    numbers: [...byQuantity.values()].map(usualNumbers).sort((a, b) => b.values.length - a.values.length),
  };
}

function usualNumbers(readings: readonly { value: number; unit: Unit }[]): UsualNumbers {
  const unit = commonest(readings.map((reading) => reading.unit));
  const values = readings.map((reading) => convertUnit(reading.value, reading.unit, unit) as number);
  const resolution = Math.min(...readings.map((reading) => convertUnit(stepOf(reading.value), reading.unit, unit) as number));
  const { usual } = numberUsual({ working: Float64Array.from(values), resolution }, Number.NaN);
  if (usual === null) return { unit, values, resolution, usual };
  const { within: _, ...range } = usual;
  return { unit, values, resolution, usual: range };
}

/** Value of the last digit that a number is written with: 0.01 for 4.97, 1 for 12. */
function stepOf(value: number): number {
  const decimals = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
  return Number(`1e-${decimals}`);
}

/** The one that comes most often; among equals, the first. */
function commonest<T>(items: readonly T[]): T {
  const counted = groups(items, (item) => item);
  return [...counted].reduce((best, other) => (other[1].length > best[1].length ? other : best))[0];
}

/** Designators and pins as people order them: U2 before U10, pin 9 before pin 10. */
const collator = new Intl.Collator('en', { numeric: true });

function inOrder(a: string, b: string): number {
  return collator.compare(a, b);
}

function groups<T, K>(items: readonly T[], key: (item: T) => K): Map<K, T[]> {
  const found = new Map<K, T[]>();
  for (const item of items) entry(found, key(item), (): T[] => []).push(item);
  return found;
}

function entry<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}
