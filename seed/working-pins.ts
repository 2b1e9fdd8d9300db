import type { Reading } from '../shared/schemas/case';
import type { BoardPart } from '../shared/schemas/device';
import type { LogicState } from '../shared/schemas/terms';
import { hashText, normal, pickIndex, seededRandom } from './random';
import type { Random } from './world';

/** Shares of high, low, pulsing and floating that a probe shows at one pin of a working unit. */
type PinShares = readonly [high: number, low: number, pulsing: number, floating: number];

const STATES: readonly LogicState[] = ['high', 'low', 'pulsing', 'floating'];

const HIGH: PinShares = [0.95, 0.01, 0.03, 0.01];
const LOW: PinShares = [0.01, 0.95, 0.03, 0.01];
const BUSY: PinShares = [0.03, 0.03, 0.92, 0.02];
const OPEN: PinShares = [0.1, 0.06, 0.04, 0.8];

/** What pins of a name do, as common practice has it: supplies are steady, buses and strobes pulse, resets rest high. */
const BY_NAME: readonly (readonly [RegExp, PinShares])[] = [
  [/^(VCC|VDD|VS|AVCC|VPP|OUT|PGM)$/, HIGH],
  [/^(GND|VSS|VEE|VBB)$/, LOW],
  [/^(RES|RESET|WAIT|NMI|BREQ|PR|[12]?PR|[12]?CLR|CLR|RDY|HALT|LOAD|ENP|ENT|LE|G1|BACK|ERR)$/, HIGH],
  [/^(TST|INH|TEST|CLP)$/, LOW],
  [/^(NC|DEL|TRAP)$/, OPEN],
  [/^(A|D|M|V|R)[0-9]+$/, BUSY],
  [/^(CK|CLK|CKP|CK14|X[12]|RAS|RASN|CAS|CASN|MX|WE|WEN|RD|WR|RW|WRL|WRH|MEM|ASTB|SYNC|CSY|HS|VS|Y|C|PIX|CLKO|CP)$/, BUSY],
];

/** The usual state of one pin on one board, and how firmly: fixed by board, part and pin, so that units of a board agree. */
export function pinShares(board: string, part: BoardPart, pin: number): PinShares {
  const name = part.pinNames[pin - 1] ?? '';
  const named = BY_NAME.find(([pattern]) => pattern.test(name))?.[1];
  if (named) return named;
  const random = seededRandom(hashText(`${board} ${part.designator} ${pin}`));
  const usual = pickIndex(random, [0.22, 0.16, 0.58, 0.04]);
  const firm = 0.72 + 0.24 * random();
  return STATES.map((_, state) => (state === usual ? firm : (1 - firm) / 3)) as unknown as PinShares;
}

/** A logic state, or now and then a voltage that fits one, at one pin of a working unit. */
export function workingReading(random: Random, board: string, part: BoardPart, pin: number): Reading {
  return readingOf(random, part, pin, STATES[pickIndex(random, pinShares(board, part, pin))] as LogicState);
}

/** The same pin where this part is at fault: often stuck or floating. */
export function faultyReading(random: Random, board: string, part: BoardPart, pin: number): Reading {
  const supply = /^(VCC|VDD|VS|GND|VSS)$/.test(part.pinNames[pin - 1] ?? '');
  if (supply || random() < 0.6) return workingReading(random, board, part, pin);
  return readingOf(random, part, pin, STATES[pickIndex(random, [0.38, 0.4, 0.02, 0.2])] as LogicState);
}

function readingOf(random: Random, part: BoardPart, pin: number, state: LogicState): Reading {
  const at = { designator: part.designator, pin: String(pin) };
  const steady = state === 'high' || state === 'low';
  if (!steady || random() < 0.75) return { ...at, state, value: null, unit: null };
  return { ...at, state: null, value: Number(voltage(random, part.pinNames[pin - 1] ?? '', state).toFixed(2)), unit: 'V' };
}

/** Volts at a steady pin: the supply near 5 V, a low-power Schottky output near 3.4 V when high and 0.2 V when low. */
function voltage(random: Random, name: string, state: 'high' | 'low'): number {
  if (/^(VCC|VDD|VS)$/.test(name)) return 5.02 + 0.06 * normal(random);
  if (/^(GND|VSS)$/.test(name)) return Math.abs(0.01 * normal(random));
  return state === 'high' ? Math.min(5, 3.6 + 0.45 * normal(random)) : Math.abs(0.18 + 0.07 * normal(random));
}

/** Parts whose pins are worth reading: chips with named pins. */
export function readableParts(parts: readonly BoardPart[]): BoardPart[] {
  return parts.filter((part) => part.pinNames.length >= 8);
}
