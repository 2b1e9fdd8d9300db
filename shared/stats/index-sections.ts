import type { Filling } from './filling';
import type { Layout } from './layout';
import { type PostingList, storedList } from './posting-list';
import { createRecordIndex, type RecordIndex } from './record-index';
import type { RecordKeys } from './record-keys';
import { type Cells, fillFrom, type Sections, sectionOf, type StoredCells, type StoredSections, storedSection } from './sections';

const COLUMNS = ['device', 'month', 'labels', 'firstCause', 'lengths'] as const;
const TALLIES = ['carrying', 'total', 'unresolved', 'proofs', 'attempts', 'attemptsByCause'] as const;
const LISTS = ['byValue', 'byCause', 'byDevice'] as const;
const KEYS = ['high', 'middle', 'low'] as const;

/**
 * The arrays that an index is made of, cut to what is in use. What only ever grows at its end is handed out as it is, the rest
 * copied: the index may go on changing.
 */
export function indexSections(index: RecordIndex): Sections {
  const { rows } = index;
  index.filling.need(0, index.wordCount);
  const sections: Sections = {
    'index.live.cells': index.live.slice(0, (rows + 31) >>> 5),
    'index.starts.cells': index.starts.subarray(0, rows + 1),
    'index.words.cells': index.words.subarray(0, index.wordCount),
    'index.slots.cells': index.keys.slots.slice(),
    'index.slots.filled': Uint32Array.of(index.keys.filled),
  };
  for (const name of COLUMNS) sections[`index.${name}.cells`] = index[name].subarray(0, rows);
  for (const name of KEYS) sections[`index.keys.${name}`] = index.keys[name].subarray(0, rows);
  for (const name of TALLIES) sections[`index.tallies.${name}`] = index[name].slice();
  for (const name of LISTS) {
    sections[`index.lists.${name}Lengths`] = Uint32Array.from(index[name], (list) => list.length);
    sections[`index.lists.${name}`] = joined(index[name]);
  }
  return sections;
}

/**
 * An index of its sections, which it keeps: hand them over. Words, keys and lists are fetched when they are first needed.
 * Throws RangeError where they belong to another layout or to one another.
 */
export function indexFromSections(layout: Layout, sections: StoredSections): RecordIndex {
  const empty = createRecordIndex(layout);
  const starts = sectionOf(sections, 'index.starts.cells', empty.starts);
  const rows = Math.max(0, starts.length - 1);
  const index: RecordIndex = { ...empty, keys: storedKeys(sections, rows) };
  for (const name of TALLIES) fillFrom(sections, `index.tallies.${name}`, index[name]);
  const words = storedSection(sections, 'index.words.cells', index.words);
  index.rows = rows;
  index.size = index.total[0] as number;
  index.starts = starts;
  index.live = sectionOf(sections, 'index.live.cells', index.live);
  index.words = words.cells;
  index.filling = words.filling;
  index.wordCount = index.words.length;
  index.device = column(sections, 'device', index.device, rows);
  index.month = column(sections, 'month', index.month, rows);
  index.labels = column(sections, 'labels', index.labels, rows);
  index.firstCause = column(sections, 'firstCause', index.firstCause, rows);
  index.lengths = column(sections, 'lengths', index.lengths, rows);
  for (const name of LISTS) cutInto(sections, name, index[name] as PostingList[]);
  if ((starts[rows] as number) !== index.wordCount) throw new RangeError('The words of the index do not fit its rows.');
  return index;
}

function column<T extends Cells>(sections: StoredSections, name: string, like: T, rows: number): T {
  const { cells, filling } = storedColumn(sections, `index.${name}.cells`, like, rows);
  filling.need(0, rows);
  return cells;
}

function storedColumn<T extends Cells>(sections: StoredSections, name: string, like: T, rows: number) {
  const stored = storedSection(sections, name, like);
  if (stored.cells.length !== rows) throw new RangeError(`The section "${name}" has another length.`);
  return stored;
}

/** The keys of rows, each array fetched when it is first looked at. */
function storedKeys(sections: StoredSections, rows: number): RecordKeys {
  const none = new Uint32Array(0);
  const property = ({ cells, filling }: StoredCells<Uint32Array>): PropertyDescriptor => {
    let held = cells;
    // Let go of once it is done: it holds on to cells that may be replaced.
    let missing: Filling | null = filling;
    return {
      enumerable: true,
      get() {
        missing?.need(0, held.length);
        missing = null;
        return held;
      },
      set(longer: Uint32Array) {
        held = longer;
        missing = null;
      },
    };
  };
  const filled = sectionOf(sections, 'index.slots.filled', none)[0] ?? 0;
  const keys = Object.fromEntries(KEYS.map((name) => [name, property(storedColumn(sections, `index.keys.${name}`, none, rows))]));
  return Object.defineProperties({ filled }, { ...keys, slots: property(storedSection(sections, 'index.slots.cells', none)) }) as RecordKeys;
}

function joined(lists: readonly PostingList[]): Uint32Array {
  const all = new Uint32Array(lists.reduce((sum, list) => sum + list.length, 0));
  let at = 0;
  for (const { rows, length } of lists) {
    all.set(rows.subarray(0, length), at);
    at += length;
  }
  return all;
}

/** Each list becomes a stretch of the joined rows; one that grows later moves to room of its own. */
function cutInto(sections: StoredSections, name: (typeof LISTS)[number], lists: PostingList[]): void {
  const all = storedSection(sections, `index.lists.${name}`, new Uint32Array(0));
  const lengths = sectionOf(sections, `index.lists.${name}Lengths`, new Uint32Array(0));
  if (lengths.length !== lists.length) throw new RangeError(`The section "index.lists.${name}Lengths" has another length.`);
  let at = 0;
  lengths.forEach((length, i) => {
    lists[i] = storedList(all, at, length);
    at += length;
  });
  if (at !== all.cells.length) throw new RangeError(`The lists of "index.lists.${name}" do not fit their lengths.`);
}
