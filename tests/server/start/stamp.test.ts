import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fingerprint } from '../../../server/start/fingerprint.mjs';
import { readStamp, unlessDone } from '../../../server/start/stamp.mjs';

const note = () => join(mkdtempSync(join(tmpdir(), 'second-bench-')), 'made-from');

describe('unlessDone', () => {
  it('does a thing once per state', async () => {
    const file = note();
    const done: string[] = [];
    for (const state of ['a', 'a', 'b', 'b', 'a']) await unlessDone(file, state, async () => void done.push(state));
    expect(done).toEqual(['a', 'b', 'a']);
  });

  it('does it again after it failed', async () => {
    const file = note();
    await unlessDone(file, 'a', async () => {});
    await expect(unlessDone(file, 'b', () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    // The result is now neither of a nor of b.
    expect(readStamp(file)).toBeNull();
  });
});

describe('fingerprint', () => {
  it('is the same for the same files, whatever else there is', () => {
    expect(fingerprint(['prisma/schema.prisma'])).toBe(fingerprint(['prisma/schema.prisma', 'no-such-folder']));
  });

  it('changes with the files and with what is added', () => {
    const all = [fingerprint(['LICENSE']), fingerprint(['LICENSE', 'LICENSE-DATA']), fingerprint(['LICENSE'], ['x']), fingerprint([])];
    expect(new Set(all).size).toBe(4);
  });
});
