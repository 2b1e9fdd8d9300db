import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { applyMigrations } from '../../prisma/migrations';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Path of a migrated, empty database that tests copy. */
    templateDatabase: string;
  }
}

/** Migrates one empty database before the server tests start; each test copies it, which takes a millisecond. */
export default async function setUp(project: TestProject): Promise<() => void> {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-template-'));
  const file = join(folder, 'template.db');
  await applyMigrations(`file:${file}`);
  project.provide('templateDatabase', file);
  return () => rmSync(folder, { recursive: true, force: true });
}
