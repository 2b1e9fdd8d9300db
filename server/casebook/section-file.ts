import { closeSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { setImmediate as breath } from 'node:timers/promises';
import { crc32 } from 'node:zlib';
import type { Cells, Sections, StoredSections } from '../../shared/stats/sections';
import { bytesOf, closeFile, DamagedFileError, fillFromFile, type OpenFile, PIECE, pieceCount, type PiecewiseFilling, readBytes } from './section-pieces';

const MAGIC = 0x31_4d_42_53;
const FORMAT = 2;
const PREAMBLE = 16;
const ALIGNED = 8;
/** Pieces between two breaths of the event loop: a megabyte. */
const PIECES_AT_ONCE = 64;
/** Arrays of a group are read in stretches; one by itself is looked at here and there. */
const PIECES_TOGETHER = 4;

const KINDS = { Uint8Array, Uint16Array, Uint32Array, Int32Array, Float64Array } as const;
type Kind = keyof typeof KINDS;

/** `checks` is the checksum of the list of checksums: one per piece of each section, in order, after the header. */
type Header<About> = { about: About; sections: { name: string; kind: Kind; length: number }[]; checks: number };

const padded = (length: number) => Math.ceil(length / ALIGNED) * ALIGNED;
const padding = (length: number) => Buffer.alloc(padded(length) - length);

/**
 * Writes arrays with a few words about them to a file: to a new one beside it, which takes its place once it is whole on
 * the disk. Arrays whose names are alike up to the last dot are read into one buffer. Every piece of an array has its own checksum. Other work goes on in between.
 */
export async function writeSections(file: string, about: unknown, sections: Sections): Promise<void> {
  const crcs = await checksums(Object.values(sections));
  const listed = Object.entries(sections).map(([name, cells]) => ({ name, kind: cells.constructor.name as Kind, length: cells.length }));
  const header = Buffer.from(JSON.stringify({ about, sections: listed, checks: crc32(bytesOf(crcs)) } satisfies Header<unknown>));
  const preamble = Buffer.alloc(PREAMBLE);
  for (const [i, word] of [MAGIC, FORMAT, header.length, crc32(header)].entries()) preamble.writeUInt32LE(word, i * 4);
  const making = `${file}.${process.pid}.new`;
  try {
    const handle = await open(making, 'w', 0o600);
    try {
      await handle.write(Buffer.concat([preamble, header, padding(header.length)]));
      for (const cells of [crcs, ...Object.values(sections)]) {
        const bytes = bytesOf(cells);
        for (let at = 0; at < bytes.length; ) at += (await handle.write(bytes, at)).bytesWritten;
        await handle.write(padding(bytes.length));
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    renameSync(making, file);
  } catch (error) {
    rmSync(making, { force: true });
    throw error;
  }
  // The new name is safe only once the folder is.
  const folder = openSync(file.replace(/[^/]*$/, '') || '.', 'r');
  fsyncSync(folder);
  closeSync(folder);
}

async function checksums(sections: readonly Cells[]): Promise<Uint32Array> {
  const crcs = new Uint32Array(sections.reduce((sum, { byteLength }) => sum + pieceCount(byteLength), 0));
  let at = 0;
  for (const cells of sections) {
    const bytes = bytesOf(cells);
    for (let from = 0; from < bytes.length; from += PIECE) {
      crcs[at] = crc32(bytes.subarray(from, from + PIECE));
      at += 1;
      if (at % PIECES_AT_ONCE === 0) await breath();
    }
  }
  return crcs;
}

/** A file of sections, whose cells are fetched when they are first needed: it stays open until all are there. */
export type SectionFile<About> = {
  about: About;
  sections: StoredSections;
  /** Fetches everything that is not there yet, and lets go of the file. Throws DamagedFileError. */
  complete(): void;
  /** The same a bit at a time, while other work goes on. */
  completeSlowly(): Promise<void>;
  /** Lets go of the file; what is not there yet cannot be had any more. */
  close(): void;
};

/**
 * Opens a file of sections; their cells are read when they are needed.
 * @param isWanted looks at what the file says of itself; where it says no, null is returned and nothing more is read.
 * @throws DamagedFileError where the file is not whole; the file system's error where it cannot be read
 */
export function openSections<About>(path: string, isWanted: (about: About) => boolean): SectionFile<About> | null {
  const file: OpenFile = { descriptor: openSync(path, 'r') };
  try {
    const { header, end } = readHeader<About>(file, statSync(path).size);
    if (!isWanted(header.about)) {
      closeFile(file);
      return null;
    }
    return { about: header.about, ...placeSections(file, header, end) };
  } catch (error) {
    closeFile(file);
    throw error;
  }
}

function readHeader<About>(file: OpenFile, size: number): { header: Header<About>; end: number } {
  const preamble = readBytes(file, new Uint8Array(PREAMBLE), 0);
  const [magic, format, length = 0, crc] = new Uint32Array(preamble.buffer);
  if (magic !== MAGIC || format !== FORMAT || length > size) throw new DamagedFileError('It is of another kind or version.');
  const text = readBytes(file, new Uint8Array(length), PREAMBLE);
  if (crc32(text) !== crc) throw new DamagedFileError('Its beginning is damaged.');
  const header = JSON.parse(Buffer.from(text).toString()) as Header<About>;
  const end = PREAMBLE + padded(length);
  const bytes = header.sections.reduce((sum, { kind, length: cells }) => sum + padded(cells * KINDS[kind].BYTES_PER_ELEMENT), 0);
  const pieces = header.sections.reduce((sum, { kind, length: cells }) => sum + pieceCount(cells * KINDS[kind].BYTES_PER_ELEMENT), 0);
  if (end + padded(pieces * 4) + bytes !== size) throw new DamagedFileError('It is cut short.');
  return { header, end };
}

function placeSections(file: OpenFile, header: Header<unknown>, from: number): Omit<SectionFile<unknown>, 'about'> {
  const widths = header.sections.map(({ kind, length }) => length * KINDS[kind].BYTES_PER_ELEMENT);
  const crcs = new Uint32Array(widths.reduce((sum, width) => sum + pieceCount(width), 0));
  readBytes(file, bytesOf(crcs), from);
  if (crc32(bytesOf(crcs)) !== header.checks) throw new DamagedFileError('Its checksums are damaged.');
  const sections: StoredSections = {};
  const fillings: PiecewiseFilling[] = [];
  let place = from + padded(crcs.byteLength);
  let piece = 0;
  const roomOf = allot(header.sections, widths);
  header.sections.forEach(({ name, kind, length }, i) => {
    const width = widths[i] as number;
    const { buffer, offset, isShared } = roomOf(i);
    const cells = new KINDS[kind](buffer, offset, length);
    const stretch = isShared ? PIECES_TOGETHER : 1;
    const filling = fillFromFile(file, cells, { name, place, crcs: crcs.subarray(piece, piece + pieceCount(width)), stretch });
    sections[name] = { cells, filling };
    fillings.push(filling);
    place += padded(width);
    piece += pieceCount(width);
  });
  return {
    sections,
    complete() {
      for (const filling of fillings) while (filling.fetchSome(PIECES_AT_ONCE));
      closeFile(file);
    },
    async completeSlowly() {
      for (const filling of fillings) {
        while (file.descriptor !== null && filling.fetchSome(PIECES_AT_ONCE)) await breath();
      }
      closeFile(file);
    },
    close: () => closeFile(file),
  };
}

/**
 * Room for each section: those with the same group share one buffer. Every buffer of some size that is asked for makes the
 * engine look through its memory first, which at a start is most of the time.
 */
function allot(sections: readonly { name: string }[], widths: readonly number[]): (i: number) => { buffer: ArrayBuffer; offset: number; isShared: boolean } {
  const sizes = new Map<string, number>();
  const places = sections.map(({ name }, i) => {
    const group = groupOf(name);
    const offset = sizes.get(group) ?? 0;
    sizes.set(group, offset + padded(widths[i] as number));
    return { group, offset };
  });
  const buffers = new Map([...sizes].map(([group, size]) => [group, new ArrayBuffer(size)]));
  return (i) => {
    const { group, offset } = places[i] as (typeof places)[number];
    return { buffer: buffers.get(group) as ArrayBuffer, offset, isShared: places.some((other, j) => j !== i && other.group === group) };
  };
}

/** What stands before the last dot of a name: sections of one group come and go together. */
function groupOf(name: string): string {
  return name.slice(0, Math.max(0, name.lastIndexOf('.')));
}
