import type { Reading } from '../../schemas/case';
import type { BoardPart } from '../../schemas/device';
import { LOGIC_STATES, type LogicState, type Unit } from '../../schemas/terms';
import { chipScore } from '../../stats/decide/chip-score';
import { numberUsual } from '../../stats/decide/number-usual';
import { stateUsual } from '../../stats/decide/state-usual';
import { isSupplyPin, levelOf, logicFamilyOf } from './logic-family';
import { convertUnit, quantityOf } from './units';
import type { UsualPart, UsualPin } from './usual-readings';

export type PinVerdict = 'usual' | 'unusual' | 'not-enough';

/** A published limit that a number was held against. */
export type PublishedLimit = { within: boolean; words: string; source: string };

export type JudgedPin = {
  pin: string;
  verdict: PinVerdict;
  /** Working units that showed this state, of those whose state is known here; 0 of 0 where the reading has no state. */
  same: number;
  of: number;
  /** Evidence that the fault involves this part, in decibans; 0 where the counts say nothing. */
  weight: number;
  /** Tolerance interval of working units and the readings behind it; null for a state or where there are too few. */
  interval: { centre: number; low: number; high: number; unit: Unit; readings: number } | null;
  published: PublishedLimit | null;
};

export type JudgedPart = {
  /** In the order of the readings. */
  pins: JudgedPin[];
  /** Evidence that the fault involves this part, in decibans: above 0 for, below 0 against. */
  score: number;
  /** Pins that drive the score, those that say most first. */
  drivers: string[];
};

/** What is known of a part: readings of working units of the board, and of units whose cause was at this part. */
export type KnownPart = { working: UsualPart | null; faulty: UsualPart | null };

/**
 * Are these readings of one part usual? Each pin against working units of the board and against published limits, and one
 * score for the part. A pin that nothing is known of is never called usual.
 */
export function judgePart(part: BoardPart, known: KnownPart, readings: readonly Reading[]): JudgedPart {
  const pins = readings.map((reading) => judgePin(part, known, reading));
  const { score, drivers } = chipScore(pins.map((pin) => pin.weight));
  return { pins, score, drivers: drivers.map((at) => pins[at]?.pin as string) };
}

/** One pin of a part against what is known of it. */
export function judgePin(part: BoardPart, known: KnownPart, reading: Reading): JudgedPin {
  const working = pinOf(known.working, reading.pin);
  const state = stateOfReading(part, reading);
  const byState = state === null ? null : judgeState(part, { working, faulty: pinOf(known.faulty, reading.pin) }, state);
  const number = judgeNumber(working, reading);
  const published = publishedLimit(part, reading);
  const base = {
    pin: reading.pin,
    same: byState?.same ?? 0,
    of: byState?.of ?? 0,
    weight: byState?.weight ?? 0,
    interval: number?.interval ?? null,
    published,
  };
  // A published limit that is broken is unusual whatever was counted; an interval of numbers says more than a state.
  if (published?.within === false) return { ...base, verdict: 'unusual' };
  return { ...base, verdict: number?.verdict ?? byState?.verdict ?? 'not-enough' };
}

const pinOf = (part: UsualPart | null, pin: string): UsualPin | null => part?.pins.find((p) => p.pin === pin) ?? null;

/** The logic state that a reading is or, by the published levels of the part's family, means; null where neither. */
export function stateOfReading(part: BoardPart, { state, value, unit }: Reading): LogicState | null {
  if (state !== null) return state;
  const volts = value === null || unit === null ? null : convertUnit(value, unit, 'V');
  return volts === null ? null : stateOfVolts(part, volts);
}

function stateOfVolts(part: BoardPart, volts: number): LogicState | null {
  const family = logicFamilyOf(part.partNumber);
  const level = family === null ? 'between' : levelOf(family, volts);
  return level === 'between' ? null : level;
}

/** How often each state was seen at a pin, in the order of `LOGIC_STATES`: those noted, and voltages that mean one. */
export function stateCounts(part: BoardPart, pin: UsualPin | null): Float64Array {
  const counts = Float64Array.from(LOGIC_STATES, (state) => pin?.states.find((s) => s.state === state)?.count ?? 0);
  for (const { unit, values } of pin?.numbers ?? []) {
    for (const value of values) {
      const volts = convertUnit(value, unit, 'V');
      const state = volts === null ? null : stateOfVolts(part, volts);
      if (state !== null) counts[LOGIC_STATES.indexOf(state)]! += 1;
    }
  }
  return counts;
}

function judgeState(part: BoardPart, at: { working: UsualPin | null; faulty: UsualPin | null }, state: LogicState) {
  const working = stateCounts(part, at.working);
  const index = LOGIC_STATES.indexOf(state);
  const judged = stateUsual({ working, faulty: stateCounts(part, at.faulty) }, index);
  const verdict: PinVerdict = judged.verdict === 'unclear' ? 'not-enough' : judged.verdict;
  return { verdict, same: working[index] as number, of: working.reduce((sum, n) => sum + n, 0), weight: judged.weight };
}

function judgeNumber(working: UsualPin | null, { value, unit }: Reading) {
  if (value === null || unit === null) return null;
  const list = working?.numbers.find((numbers) => quantityOf(numbers.unit) === quantityOf(unit));
  const converted = list && convertUnit(value, unit, list.unit);
  if (list === undefined || typeof converted !== 'number') return null;
  const { usual } = numberUsual({ working: Float64Array.from(list.values), resolution: list.resolution }, converted);
  if (usual === null) return null;
  const { centre, low, high, readings, within } = usual;
  const verdict: PinVerdict = within ? 'usual' : 'unusual';
  return { verdict, interval: { centre, low, high, unit: list.unit, readings } };
}

/** The supply's tolerance at a supply pin, the family's input levels at any other; null where nothing is published. */
export function publishedLimit(part: BoardPart, { pin, value, unit }: Reading): PublishedLimit | null {
  const family = logicFamilyOf(part.partNumber);
  const volts = value === null || unit === null ? null : convertUnit(value, unit, 'V');
  if (family === null || volts === null) return null;
  const { name, supply, inputHigh, inputLow, source } = family;
  if (isSupplyPin(part.pinNames[Number(pin) - 1] ?? '')) {
    const within = volts >= supply.low && volts <= supply.high;
    return { within, words: `Supply of ${name}: ${supply.low} to ${supply.high} V`, source };
  }
  const within = levelOf(family, volts) !== 'between';
  return { within, words: `Levels of ${name}: low up to ${inputLow} V, high from ${inputHigh} V`, source };
}
