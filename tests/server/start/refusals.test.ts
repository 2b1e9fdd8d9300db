import { spawn } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { projectFolder } from '../../../server/start/project-folder.mjs';

/** Runs the demo's command as npm does, but for npm. */
function demo(args: string[], env: Record<string, string> = {}): Promise<{ code: number | null; said: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['server/start/demo.mjs', ...args], {
      cwd: projectFolder,
      env: { ...process.env, DATABASE_URL: `file:${join(tmpdir(), 'second-bench-never-made', 'x.db')}`, ...env },
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (said += chunk));
    child.on('close', (code) => resolve({ code, said: said.trim() }));
  });
}

describe('the demo', () => {
  it('says in one line that its port is taken, before it does anything else', async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => {
      server.close();
    });
    const { port } = server.address() as { port: number };
    const { code, said } = await demo(['--port', String(port)]);
    expect(code).toBe(1);
    expect(said).toMatch(new RegExp(`^Port ${port} is taken: .*$`));
  });

  it('says in one line that an option is not one of its own', async () => {
    const { code, said } = await demo(['--prot', '4310']);
    expect(code).toBe(1);
    expect(said).toMatch(/^Unknown option '--prot'.*npm run demo -- --port 4311$/);
  });

  it('says in one line that the data folder cannot be made', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'second-bench-')), 'file');
    writeFileSync(file, '');
    const { code, said } = await demo([], { DATABASE_URL: `file:${join(file, 'data', 'x.db')}` });
    expect(code).toBe(1);
    expect(said).toMatch(/^The folder .* cannot be written to \(E\w+\): make it writable, or name another place, .*$/);
  });

  it('says in one line that the database is of another kind', async () => {
    const { code, said } = await demo([], { DATABASE_URL: 'postgresql://localhost/x' });
    expect(code).toBe(1);
    expect(said).toBe('DATABASE_URL must be the address of a SQLite file, such as file:./data/second-bench.db.');
  });
});
