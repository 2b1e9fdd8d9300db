import { closeSync, fsyncSync, openSync, readSync, renameSync, rmSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { crc32 } from 'node:zlib';
import type { Cells, Sections } from '../../shared/stats/sections';

const MAGIC = 0x31_4d_42_53;
const FORMAT = 1;
const PREAMBLE = 16;
const ALIGNED = 8;

const KINDS = { Uint8Array, Uint16Array, Uint32Array, Int32Array, Float64Array } as const;
type Kind = keyof typeof KINDS;

type Header<About> = { about: About; sections: { name: string; kind: Kind; length: number; crc: number }[] };

/** Thrown where a file of sections is damaged, of another format, or cut short. */
export class DamagedFileError extends Error {
  override name = 'DamagedFileError';
}

const bytesOf = (cells: Cells) => new Uint8Array(cells.buffer, cells.byteOffset, cells.byteLength);
const padded = (length: number) => Math.ceil(length / ALIGNED) * ALIGNED;

/**
 * Writes arrays with a few words about them to a file: to a new one beside it, which takes its place once it is whole on
 * the disk. Each array has its own checksum. Other work goes on between the arrays.
 */
export async function writeSections(file: string, about: unknown, sections: Sections): Promise<void> {
  const listed: Header<unknown>['sections'] = [];
  for (const [name, cells] of Object.entries(sections)) {
    listed.push({ name, kind: cells.constructor.name as Kind, length: cells.length, crc: crc32(bytesOf(cells)) });
    await new Promise((resolve) => setImmediate(resolve));
  }
  const header = Buffer.from(JSON.stringify({ about, sections: listed }));
  const preamble = Buffer.alloc(PREAMBLE);
  for (const [i, word] of [MAGIC, FORMAT, header.length, crc32(header)].entries()) preamble.writeUInt32LE(word, i * 4);
  const making = `${file}.${process.pid}.new`;
  try {
    const handle = await open(making, 'w', 0o600);
    try {
      await handle.write(Buffer.concat([preamble, header, Buffer.alloc(padded(header.length) - header.length)]));
      for (const cells of Object.values(sections)) {
        const bytes = bytesOf(cells);
        for (let at = 0; at < bytes.length; ) at += (await handle.write(bytes, at)).bytesWritten;
        await handle.write(Buffer.alloc(padded(bytes.length) - bytes.length));
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

/**
 * Reads a file of sections straight into new arrays.
 * @param isWanted looks at what the file says of itself; where it says no, null is returned and nothing more is read.
 * @throws DamagedFileError where the file is not whole; the file system's error where it cannot be read
 */
export function readSections<About>(file: string, isWanted: (about: About) => boolean): { about: About; sections: Sections } | null {
  const size = statSync(file).size;
  const descriptor = openSync(file, 'r');
  try {
    const preamble = readBytes(descriptor, new Uint8Array(PREAMBLE), 0);
    const [magic, format, length, crc] = new Uint32Array(preamble.buffer);
    if (magic !== MAGIC || format !== FORMAT || (length as number) > size) throw new DamagedFileError('It is of another kind or version.');
    const text = readBytes(descriptor, new Uint8Array(length as number), PREAMBLE);
    if (crc32(text) !== crc) throw new DamagedFileError('Its beginning is damaged.');
    const { about, sections: listed } = JSON.parse(Buffer.from(text).toString()) as Header<About>;
    if (!isWanted(about)) return null;
    const sections: Sections = {};
    let at = PREAMBLE + padded(length as number);
    for (const { name, kind, length: cellCount, crc: expected } of listed) {
      if (at + cellCount > size) throw new DamagedFileError('It is cut short.');
      const cells = new KINDS[kind](cellCount);
      const bytes = readBytes(descriptor, bytesOf(cells), at);
      if (crc32(bytes) !== expected) throw new DamagedFileError(`Its part "${name}" is damaged.`);
      sections[name] = cells;
      at += padded(bytes.length);
    }
    return { about, sections };
  } finally {
    closeSync(descriptor);
  }
}

function readBytes(descriptor: number, into: Uint8Array, from: number): Uint8Array {
  for (let done = 0; done < into.length; ) {
    const read = readSync(descriptor, into, done, into.length - done, from + done);
    if (read === 0) throw new DamagedFileError('It is cut short.');
    done += read;
  }
  return into;
}
