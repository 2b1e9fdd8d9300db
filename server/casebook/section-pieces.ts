import { closeSync, readSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import type { Filling } from '../../shared/stats/filling';
import type { Cells } from '../../shared/stats/sections';

/** Bytes that have one checksum, and are read together. */
export const PIECE = 1 << 14;

/** Thrown where a file of sections is damaged, of another format, or cut short. */
export class DamagedFileError extends Error {
  override name = 'DamagedFileError';
}

export const bytesOf = (cells: Cells) => new Uint8Array(cells.buffer, cells.byteOffset, cells.byteLength);
export const pieceCount = (byteLength: number) => Math.ceil(byteLength / PIECE);

/** A file that is read from as long as something in it is not there yet; null once it is closed. */
export type OpenFile = { descriptor: number | null };

export function closeFile(file: OpenFile): void {
  if (file.descriptor !== null) closeSync(file.descriptor);
  file.descriptor = null;
}

/** Reads so many bytes from a place of the file. Throws DamagedFileError where it ends before. */
export function readBytes({ descriptor }: OpenFile, into: Uint8Array, from: number): Uint8Array {
  if (descriptor === null) throw new DamagedFileError('It is closed.');
  for (let done = 0; done < into.length; ) {
    const read = readSync(descriptor, into, done, into.length - done, from + done);
    if (read === 0) throw new DamagedFileError('It is cut short.');
    done += read;
  }
  return into;
}

/** The cells of one section that come piece by piece, and the pieces that are not there yet. */
export type PiecewiseFilling = Filling & {
  /** Fetches up to so many of the pieces that are still missing; returns whether any were. */
  fetchSome(pieces: number): boolean;
};

/**
 * Fetches the pieces of a section when they are needed, each held against its checksum.
 * @param place where the section's bytes begin in the file
 * @param crcs checksums of its pieces
 * @param stretch how many pieces are read together at least, where what is near is likely to be needed next
 */
export function fillFromFile(
  file: OpenFile,
  cells: Cells,
  { name, place, crcs, stretch }: { name: string; place: number; crcs: Uint32Array; stretch: number },
): PiecewiseFilling {
  const bytes = bytesOf(cells);
  const width = cells.BYTES_PER_ELEMENT;
  const isThere = new Uint8Array(crcs.length);
  let missing = crcs.length;
  /** No piece before this one is missing. */
  let next = 0;
  const fetch = (first: number, end: number) => {
    readBytes(file, bytes.subarray(first * PIECE, end * PIECE), place + first * PIECE);
    for (let piece = first; piece < end; piece += 1) {
      const own = bytes.subarray(piece * PIECE, (piece + 1) * PIECE);
      if (crc32(own) !== crcs[piece]) throw new DamagedFileError(`Its part "${name}" is damaged.`);
      isThere[piece] = 1;
      missing -= 1;
    }
  };
  const fetchMissing = (first: number, end: number) => {
    for (let piece = first; piece < end; piece += 1) {
      if (isThere[piece] === 1) continue;
      const most = Math.min(crcs.length, Math.max(end, piece + stretch));
      let after = piece + 1;
      while (after < most && isThere[after] === 0) after += 1;
      fetch(piece, after);
      piece = after;
    }
  };
  return {
    get done() {
      return missing === 0;
    },
    need(from, to) {
      if (missing > 0 && to > from) fetchMissing(Math.floor((from * width) / PIECE), Math.ceil((to * width) / PIECE));
    },
    fetchSome(pieces) {
      while (next < crcs.length && isThere[next] === 1) next += 1;
      fetchMissing(next, Math.min(crcs.length, next + pieces));
      return missing > 0;
    },
  };
}
