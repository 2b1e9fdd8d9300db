import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject, onTestFinished } from 'vitest';
import type { PrismaClient } from '../../prisma/generated/client';
import { createDb } from '../../server/db';

/** One test's own database. */
export interface TestDatabase {
  db: PrismaClient;
  /** `file:` address, for code that opens its own connection. */
  url: string;
  /** Disconnects and removes the file. */
  close: () => Promise<void>;
}

/**
 * A migrated, empty database, for `beforeAll`; whoever calls this closes it. For tests under tests/server and tests/prisma.
 */
export function openTestDatabase(): TestDatabase {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-test-'));
  const file = join(folder, 'test.db');
  copyFileSync(inject('templateDatabase'), file);
  const url = `file:${file}`;
  const db = createDb(url);
  const close = async () => {
    await db.$disconnect();
    rmSync(folder, { recursive: true, force: true });
  };
  return { db, url, close };
}

/** The same for a single test: call it inside `it`; it is removed when that test ends. */
export function testDatabase(): TestDatabase {
  const opened = openTestDatabase();
  onTestFinished(opened.close);
  return opened;
}
