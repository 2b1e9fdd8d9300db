import { countWord } from './bit-set';
import { FILLED, type Filling } from './filling';

/** Numbers that one count in `before` stands for: 256, eight words of bits. */
const GROUP_BITS = 8;
const GROUP_WORDS = 8;

/**
 * Which keys each of many rows has, a bit each, and how many it has before each group of 256: so a key's place among the row's
 * is found by looking at a few words, and a key that is there takes a bit and not two bytes.
 */
export type CellKeys = {
  /** Words and groups of one row. */
  readonly words: number;
  readonly groups: number;
  bits: Uint32Array;
  before: Uint16Array;
  /** Fetches bits that are still in a file. */
  filling: Filling;
};

/** Room for the keys 0 to before `width` of so many rows. */
export function createCellKeys(width: number, rows: number): CellKeys {
  const groups = Math.max(1, Math.ceil(width / (1 << GROUP_BITS)));
  const words = groups * GROUP_WORDS;
  return { words, groups, bits: new Uint32Array(rows * words), before: new Uint16Array(rows * groups), filling: FILLED };
}

/** Makes room for more rows. */
export function growCellKeys(keys: CellKeys, rows: number): void {
  keys.filling.need(0, keys.bits.length);
  keys.filling = FILLED;
  const [bits, before] = [new Uint32Array(rows * keys.words), new Uint16Array(rows * keys.groups)];
  bits.set(keys.bits);
  before.set(keys.before);
  keys.bits = bits;
  keys.before = before;
}

/** Makes sure that the bits of a row are there. */
export function fetchKeys({ filling, words }: CellKeys, row: number): void {
  if (!filling.done) filling.need(row * words, (row + 1) * words);
}

/** Whether a row has the key. */
export function hasKey({ bits, words }: CellKeys, row: number, key: number): boolean {
  return (((bits[row * words + (key >>> 5)] as number) >>> (key & 31)) & 1) === 1;
}

/** How many keys below this one a row has. */
export function placeOfKey({ bits, before, words, groups }: CellKeys, row: number, key: number): number {
  const group = key >>> GROUP_BITS;
  const last = row * words + (key >>> 5);
  let place = before[row * groups + group] as number;
  for (let w = row * words + group * GROUP_WORDS; w < last; w += 1) place += countWord(bits[w] as number);
  return place + countWord((bits[last] as number) & ((1 << (key & 31)) - 1));
}

/** Gives a row a key that it has not, or takes one that it has. */
export function changeKey({ bits, before, words, groups }: CellKeys, row: number, key: number, by: 1 | -1): void {
  const at = row * words + (key >>> 5);
  bits[at] = (bits[at] as number) ^ (1 << (key & 31));
  for (let group = (key >>> GROUP_BITS) + 1; group < groups; group += 1) {
    before[row * groups + group] = (before[row * groups + group] as number) + by;
  }
}

/** Takes all keys of a row. */
export function clearKeys({ bits, before, words, groups }: CellKeys, row: number): void {
  bits.fill(0, row * words, (row + 1) * words);
  before.fill(0, row * groups, (row + 1) * groups);
}

/** Calls `visit` for each key of a row, in ascending order. */
export function forEachKey({ bits, words }: CellKeys, row: number, visit: (key: number) => void): void {
  for (let w = 0; w < words; w += 1) {
    let word = bits[row * words + w] as number;
    while (word !== 0) {
      visit(w * 32 + (31 - Math.clz32(word & -word)));
      word &= word - 1;
    }
  }
}
