import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { dataDictionary } from '../../shared/domain/open-data/data-dictionary';
import { type FileFacts, packageDescriptor } from '../../shared/domain/open-data/package-descriptor';
import type { Db } from '../db';
import { PACKAGE_FILES } from './package-files';

/**
 * Writes the casebook as a Data Package: every file, the dictionary, and last the descriptor with sizes and checksums.
 * A folder that holds anything already is left alone and gives false.
 *
 * @param folder made if it is not there.
 */
export async function writePackage(db: Db, folder: string): Promise<boolean> {
  await mkdir(folder, { recursive: true });
  if ((await readdir(folder)).length > 0) return false;
  const facts = new Map<string, FileFacts>();
  for (const [path, file] of PACKAGE_FILES) {
    const hash = createHash('sha256');
    let bytes = 0;
    const counted = async function* (pieces: AsyncIterable<string>) {
      for await (const piece of pieces) {
        const buffer = Buffer.from(piece, 'utf8');
        hash.update(buffer);
        bytes += buffer.length;
        yield buffer;
      }
    };
    await pipeline(file.pieces(db), counted, createWriteStream(join(folder, path)));
    facts.set(path, { bytes, hash: `sha256:${hash.digest('hex')}` });
  }
  await writeFile(join(folder, 'data-dictionary.md'), dataDictionary());
  await writeFile(join(folder, 'datapackage.json'), `${JSON.stringify(packageDescriptor(facts), null, 2)}\n`);
  return true;
}
