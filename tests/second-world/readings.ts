import type { Random } from '../../seed/world';
import type { Reading, WorkingUnitRecord } from '../../shared/schemas/case';
import type { BoardPart } from '../../shared/schemas/device';
import type { LogicState } from '../../shared/schemas/terms';
import { secondCatalogue } from './catalogue/second-catalogue';
import type { DrawnUnit } from './draw-unit';
import { detail, hashText, seededRandom } from './seeded-random';

const boards = secondCatalogue.models.flatMap((model) => model.boards);
const chipsOf = new Map(boards.map((board) => [board.slug, board.parts.filter((part) => part.pinNames.includes('VCC'))]));

/** Boards that have chips with pins worth reading. */
export const readableBoards: readonly string[] = boards
  .map((board) => board.slug)
  .filter((slug) => chipsOf.get(slug)!.length > 0);

/** The state that a pin of this kind of part usually shows while a unit works. */
function usualState(part: BoardPart, pin: string): LogicState {
  if (pin === 'GND') return 'low';
  const place = detail(`pin ${part.role} ${part.partNumber} ${pin}`);
  if (place < 0.62) return 'pulsing';
  return place < 0.8 ? 'high' : place < 0.95 ? 'low' : 'floating';
}

const OTHERS: readonly LogicState[] = ['low', 'high', 'floating', 'pulsing'];

/** One reading; `oddity` is the chance that a pin shows something else than usual. */
function readPin(random: Random, part: BoardPart, about: { pin: number; oddity: number }): Reading {
  const name = part.pinNames[about.pin]!;
  const base = { designator: part.designator, pin: String(about.pin + 1) };
  const odd = random() < about.oddity;
  if (name === 'VCC') return { ...base, state: null, value: Number(((odd ? 3.4 : 4.92) + 0.2 * random()).toFixed(2)), unit: 'V' };
  return { ...base, state: odd ? OTHERS[Math.floor(random() * 4)]! : usualState(part, name), value: null, unit: null };
}

function readings(random: Random, board: string, about: { count: number; oddity: number }): Reading[] {
  const chips = chipsOf.get(board) ?? [];
  if (chips.length === 0) return [];
  const taken = new Map<string, Reading>();
  for (let i = 0; i < about.count; i += 1) {
    const part = chips[Math.floor(random() * chips.length)]!;
    const reading = readPin(random, part, { pin: Math.floor(random() * part.pins), oddity: about.oddity });
    taken.set(`${reading.designator} ${reading.pin}`, reading);
  }
  return [...taken.values()];
}

/** A few readings from a faulty unit: odder where the unit doesn't run. */
export function caseReadings(random: Random, unit: DrawnUnit): Reading[] {
  return readings(random, unit.board, { count: 2 + Math.floor(random() * 4), oddity: unit.powered ? 0.12 : 0.55 });
}

/** Readings from working units of boards that have chips; 4 % of the pins read oddly. */
export function drawWorkingUnits(seed: number, count: number): Omit<WorkingUnitRecord, 'id'>[] {
  return Array.from({ length: count }, (_, i) => {
    const random = seededRandom(hashText(`working ${seed} ${i}`));
    const device = readableBoards[Math.floor(random() * readableBoards.length)]!;
    const month = `${2018 + Math.floor(random() * 8)}-${String(1 + Math.floor(random() * 12)).padStart(2, '0')}`;
    return { device, month, readings: readings(random, device, { count: 12 + Math.floor(random() * 24), oddity: 0.04 }) };
  });
}
