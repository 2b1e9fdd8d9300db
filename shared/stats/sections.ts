/** Cells of any width that a model is made of. */
export type Cells = Uint8Array | Uint16Array | Uint32Array | Int32Array | Float64Array;

/** The arrays of a model by name, as they are written to a file and read back. */
export type Sections = Record<string, Cells>;

/** A section that must be there and be of this kind. Throws RangeError where it is not. */
export function sectionOf<T extends Cells>(sections: Sections, name: string, like: T): T {
  const cells = sections[name];
  if (cells === undefined || cells.constructor !== like.constructor) throw new RangeError(`The section "${name}" is missing.`);
  return cells as T;
}

/** Copies a section into an array of the same length. Throws RangeError where it has another length. */
export function fillFrom<T extends Cells>(sections: Sections, name: string, into: T): void {
  const cells = sectionOf(sections, name, into);
  if (cells.length !== into.length) throw new RangeError(`The section "${name}" has another length.`);
  into.set(cells);
}
