import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { createSqliteEngine } from '../../../../server/search/sqlite-fts';
import { engineContract } from './engine-contract';

const folder = mkdtempSync(join(tmpdir(), 'second-bench-contract-'));
const engine = createSqliteEngine(join(folder, 'index'));
afterAll(async () => {
  await engine.close();
  rmSync(folder, { recursive: true, force: true });
});

engineContract('SQLite', () => engine);
