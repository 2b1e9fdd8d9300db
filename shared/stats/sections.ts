import { FILLED, type Filling } from './filling';

/** Cells of any width that a model is made of. */
export type Cells = Uint8Array | Uint16Array | Uint32Array | Int32Array | Float64Array;

/** The arrays of a model by name, as they are written to a file. */
export type Sections = Record<string, Cells>;

/** An array as it comes back from a file: its cells are there once its filling was asked for them. */
export type StoredCells<T extends Cells = Cells> = { cells: T; filling: Filling };
export type StoredSections = Record<string, StoredCells>;

/** Sections that are in memory. */
export function storedInMemory(sections: Sections): StoredSections {
  return Object.fromEntries(Object.entries(sections).map(([name, cells]) => [name, { cells, filling: FILLED }]));
}

/** A section that must be there and be of this kind, its cells to be asked for. Throws RangeError where it is not. */
export function storedSection<T extends Cells>(sections: StoredSections, name: string, like: T): StoredCells<T> {
  const stored = sections[name];
  if (stored === undefined || stored.cells.constructor !== like.constructor) throw new RangeError(`The section "${name}" is missing.`);
  return stored as StoredCells<T>;
}

/** The same with all its cells fetched. */
export function sectionOf<T extends Cells>(sections: StoredSections, name: string, like: T): T {
  const { cells, filling } = storedSection(sections, name, like);
  filling.need(0, cells.length);
  return cells;
}

/** Copies a section into an array of the same length. Throws RangeError where it has another length. */
export function fillFrom<T extends Cells>(sections: StoredSections, name: string, into: T): void {
  const cells = sectionOf(sections, name, into);
  if (cells.length !== into.length) throw new RangeError(`The section "${name}" has another length.`);
  into.set(cells);
}
