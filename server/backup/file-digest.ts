import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';

/** SHA-256 of a file in hexadecimal, and its length in bytes; read in pieces. */
export async function fileDigest(path: string): Promise<{ bytes: number; sha256: string }> {
  const hash = createHash('sha256');
  let bytes = 0;
  await pipeline(createReadStream(path), async (chunks) => {
    for await (const chunk of chunks as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      hash.update(chunk);
    }
  });
  return { bytes, sha256: hash.digest('hex') };
}

/** Has the machine write a file or folder to its disk, so that losing power afterwards cannot lose it. */
export async function settleOnDisk(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
