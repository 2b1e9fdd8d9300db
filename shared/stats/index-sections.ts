import type { Layout } from './layout';
import type { PostingList } from './posting-list';
import { createRecordIndex, type RecordIndex } from './record-index';
import { fillFrom, type Sections, sectionOf } from './sections';

const COLUMNS = ['device', 'month', 'labels', 'firstCause'] as const;
const TALLIES = ['carrying', 'total', 'unresolved', 'proofs', 'attempts', 'attemptsByCause'] as const;
const LISTS = ['byValue', 'byCause', 'byDevice'] as const;
const KEYS = ['high', 'middle', 'low'] as const;

/** Copies of the arrays that an index is made of, cut to what is in use. */
export function indexSections(index: RecordIndex): Sections {
  const { rows } = index;
  const sections: Sections = {
    'index.live': index.live.slice(0, (rows + 31) >>> 5),
    'index.starts': index.starts.slice(0, rows + 1),
    'index.words': index.words.slice(0, index.wordCount),
    'index.slots': index.keys.slots.slice(),
    'index.filled': Uint32Array.of(index.keys.filled),
  };
  for (const name of COLUMNS) sections[`index.${name}`] = index[name].slice(0, rows);
  for (const name of KEYS) sections[`index.${name}`] = index.keys[name].slice(0, rows);
  for (const name of TALLIES) sections[`index.${name}`] = index[name].slice();
  for (const name of LISTS) {
    sections[`index.${name}Lengths`] = Uint32Array.from(index[name], (list) => list.length);
    sections[`index.${name}`] = joined(index[name]);
  }
  return sections;
}

/**
 * An index of its sections, which it keeps: hand them over. Throws RangeError where they belong to another layout or to
 * one another.
 */
export function indexFromSections(layout: Layout, sections: Sections): RecordIndex {
  const index = createRecordIndex(layout);
  const starts = sectionOf(sections, 'index.starts', index.starts);
  const rows = Math.max(0, starts.length - 1);
  for (const name of TALLIES) fillFrom(sections, `index.${name}`, index[name]);
  index.rows = rows;
  index.size = index.total[0] as number;
  index.starts = starts;
  index.live = sectionOf(sections, 'index.live', index.live);
  index.words = sectionOf(sections, 'index.words', index.words);
  index.wordCount = index.words.length;
  index.device = column(sections, 'device', index.device, rows);
  index.month = column(sections, 'month', index.month, rows);
  index.labels = column(sections, 'labels', index.labels, rows);
  index.firstCause = column(sections, 'firstCause', index.firstCause, rows);
  for (const name of KEYS) index.keys[name] = column(sections, name, index.keys[name], rows);
  index.keys.slots = sectionOf(sections, 'index.slots', index.keys.slots);
  index.keys.filled = sectionOf(sections, 'index.filled', new Uint32Array(0))[0] ?? 0;
  for (const name of LISTS) cutInto(sections, name, index[name]);
  if ((starts[rows] as number) !== index.wordCount) throw new RangeError('The words of the index do not fit its rows.');
  return index;
}

function column<T extends Uint8Array | Uint16Array | Uint32Array>(sections: Sections, name: string, like: T, rows: number): T {
  const cells = sectionOf(sections, `index.${name}`, like);
  if (cells.length !== rows) throw new RangeError(`The section "index.${name}" has another length.`);
  return cells;
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
function cutInto(sections: Sections, name: (typeof LISTS)[number], lists: readonly PostingList[]): void {
  const all = sectionOf(sections, `index.${name}`, new Uint32Array(0));
  const lengths = sectionOf(sections, `index.${name}Lengths`, new Uint32Array(0));
  if (lengths.length !== lists.length) throw new RangeError(`The section "index.${name}Lengths" has another length.`);
  let at = 0;
  lists.forEach((list, i) => {
    const length = lengths[i] as number;
    list.rows = all.subarray(at, at + length);
    list.length = length;
    at += length;
  });
  if (at !== all.length) throw new RangeError(`The lists of "index.${name}" do not fit their lengths.`);
}
