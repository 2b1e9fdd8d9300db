import { withRoom } from './posting-list';

/** Names a record from outside: three whole numbers below 2^32, compared one after another. */
export type RecordKey = readonly [number, number, number];

/** The keys of rows, and the row of a key by open addressing. */
export type RecordKeys = {
  high: Uint32Array;
  middle: Uint32Array;
  low: Uint32Array;
  /** Row + 1, 0 where empty, `TAKEN_OUT` where a row was. */
  slots: Uint32Array;
  /** Slots that are not 0. */
  filled: number;
};

const TAKEN_OUT = 0xffffffff;

export function createRecordKeys(): RecordKeys {
  return { high: new Uint32Array(16), middle: new Uint32Array(16), low: new Uint32Array(16), slots: new Uint32Array(32), filled: 0 };
}

/** Gives a row its key, which no other row may have. */
export function setKey(keys: RecordKeys, row: number, key: RecordKey): void {
  keys.high = withRoom(keys.high, row + 1);
  keys.middle = withRoom(keys.middle, row + 1);
  keys.low = withRoom(keys.low, row + 1);
  [keys.high[row], keys.middle[row], keys.low[row]] = key;
  if ((keys.filled + 1) * 5 > keys.slots.length * 4) rehash(keys);
  place(keys, row);
}

/** The row that has the key; -1 where none has. */
export function rowOfKey(keys: RecordKeys, key: RecordKey): number {
  const slot = slotOf(keys, key);
  return slot < 0 ? -1 : (keys.slots[slot] as number) - 1;
}

/** Forgets that the row has its key, so that another can get it. */
export function dropKey(keys: RecordKeys, row: number): void {
  const slot = slotOf(keys, [keys.high[row] as number, keys.middle[row] as number, keys.low[row] as number]);
  if (slot >= 0 && keys.slots[slot] === row + 1) keys.slots[slot] = TAKEN_OUT;
}

/** Below 0 where the first row's key comes first. */
export function compareKeys(keys: RecordKeys, a: number, b: number): number {
  // One array after the other: mostly the first tells, and those behind it need not be fetched.
  const { high } = keys;
  if (high[a] !== high[b]) return (high[a] as number) - (high[b] as number);
  const { middle, low } = keys;
  return (middle[a] as number) - (middle[b] as number) || (low[a] as number) - (low[b] as number);
}

function hashOf(high: number, middle: number, low: number): number {
  let h = Math.imul(high ^ 0x9e3779b9, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15) ^ middle, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 13) ^ low, 0x27d4eb2f);
  return (h ^ (h >>> 16)) >>> 0;
}

/** The slot where the search for a key begins: its hash, spread evenly over any number of slots. */
function firstSlot(slots: Uint32Array, [high, middle, low]: RecordKey): number {
  return Math.floor((hashOf(high, middle, low) * slots.length) / 2 ** 32);
}

function slotOf(keys: RecordKeys, key: RecordKey): number {
  const { slots } = keys;
  const [high, middle, low] = key;
  for (let slot = firstSlot(slots, key); ; slot = slot + 1 === slots.length ? 0 : slot + 1) {
    const held = slots[slot] as number;
    if (held === 0) return -1;
    const row = held - 1;
    if (held !== TAKEN_OUT && keys.high[row] === high && keys.middle[row] === middle && keys.low[row] === low) return slot;
  }
}

function place(keys: RecordKeys, row: number): void {
  const { slots } = keys;
  let slot = firstSlot(slots, [keys.high[row] as number, keys.middle[row] as number, keys.low[row] as number]);
  while (slots[slot] !== 0) slot = slot + 1 === slots.length ? 0 : slot + 1;
  slots[slot] = row + 1;
  keys.filled += 1;
}

/** Makes new slots, a third of them empty. */
function rehash(keys: RecordKeys): void {
  const rows = keys.slots.filter((held) => held !== 0 && held !== TAKEN_OUT);
  keys.slots = new Uint32Array(Math.max(32, Math.ceil(rows.length * 1.5)));
  keys.filled = 0;
  for (const held of rows) place(keys, held - 1);
}
