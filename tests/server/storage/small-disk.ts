import { execFileSync } from 'node:child_process';
import { closeSync, copyFileSync, existsSync, mkdirSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject, onTestFinished } from 'vitest';

/** Whether this process may mount disks of its own; `why` says why not, for the name of a test that is skipped. */
export const mayMount: { ok: boolean; why: string } = tryMount();

function tryMount(): { ok: boolean; why: string } {
  if (process.platform !== 'linux') return { ok: false, why: 'only Linux mounts a tmpfs' };
  if (process.getuid?.() !== 0) return { ok: false, why: 'mounting needs root' };
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-disk-'));
  try {
    mount(['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', folder]);
    execFileSync('umount', [folder]);
    return { ok: true, why: '' };
  } catch {
    return { ok: false, why: 'mounting is refused here' };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function mount(args: string[]): void {
  execFileSync('mount', args, { stdio: 'pipe' });
}

export type SmallDisk = {
  /** The migrated, empty database on it. */
  file: string;
  /** The same file, seen through a mount that cannot be written. */
  readOnlyFile: () => string;
  /** Leaves no room at all. */
  fill: () => void;
  /** Gives the room back. */
  makeRoom: () => void;
};

/** A disk of its own for one test, with a database on it; taken away when the test ends. */
export function smallDisk(megabytes: number): SmallDisk {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-disk-'));
  const [disk, view] = [join(folder, 'disk'), join(folder, 'read-only')];
  for (const place of [disk, view]) mkdirSync(place);
  mount(['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', disk]);
  onTestFinished(() => {
    // Lazily: whatever still has a file open on it does not keep the test from ending.
    for (const place of [view, disk]) {
      try {
        execFileSync('umount', ['-l', place], { stdio: 'pipe' });
      } catch {
        // It was not mounted.
      }
    }
    rmSync(folder, { recursive: true, force: true });
  });
  copyFileSync(inject('templateDatabase'), join(disk, 'casebook.db'));
  return {
    file: join(disk, 'casebook.db'),
    readOnlyFile: () => {
      if (existsSync(join(view, 'casebook.db'))) return join(view, 'casebook.db');
      mount(['--bind', disk, view]);
      mount(['-o', 'remount,bind,ro', view]);
      return join(view, 'casebook.db');
    },
    fill: () => fill(join(disk, 'ballast')),
    makeRoom: () => rmSync(join(disk, 'ballast')),
  };
}

function fill(path: string): void {
  const file = openSync(path, 'w');
  for (const size of [64 * 1024, 4096, 1]) {
    const bytes = Buffer.alloc(size, 1);
    try {
      for (;;) if (writeSync(file, bytes) < size) break;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error;
    }
  }
  closeSync(file);
}
