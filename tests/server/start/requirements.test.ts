import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readEnv } from '../../../server/env';
import { databaseFile, requireWritable, requireWritableDatabase } from '../../../server/start/data-folder.mjs';
import { sameInstall } from '../../../server/start/install.mjs';
import { nodeFault } from '../../../server/start/node-version.mjs';
import { serveOptions } from '../../../server/start/options.mjs';
import { freePort, requirePort } from '../../../server/start/port.mjs';

const demo = { command: 'run demo', port: 4310 };

describe('nodeFault', () => {
  it.each(['20.19.0', '20.20.2', '22.0.0', '100.1.0'])('accepts %s', (version) => expect(nodeFault(version)).toBeNull());

  it.each(['20.18.3', '18.20.0', '8.0.0'])('refuses %s, naming it and what is needed', (version) => {
    expect(nodeFault(version)).toContain(`needs Node 20.19 or later, and this is Node ${version}`);
  });
});

describe('serveOptions', () => {
  it('listens to this machine only, at the usual port, unless told otherwise', () => {
    expect(serveOptions([], demo)).toEqual({ port: 4310, host: '127.0.0.1' });
    expect(serveOptions(['--port', '80', '--host=0.0.0.0'], demo)).toEqual({ port: 80, host: '0.0.0.0' });
  });

  it.each([['--port', 'x'], ['--port', '0'], ['--port', '65536'], ['--port', '4310.5'], ['--port='], ['--prot', '1'], ['extra'], ['--port']])(
    'refuses %s %s with the way to write it',
    (...args) => expect(() => serveOptions(args, demo)).toThrow('npm run demo -- --port 4311'),
  );
});

describe('requirePort', () => {
  it('says in one sentence that a port is taken and how to choose another', async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => {
      server.close();
    });
    const { port } = server.address() as { port: number };
    await expect(requirePort({ port, host: '127.0.0.1', command: 'run demo' })).rejects.toThrow(
      `Port ${port} is taken: stop what uses it, or choose another: npm run demo -- --port`,
    );
  });

  it('lets a free port pass', async () => {
    await requirePort({ port: await freePort(), host: '127.0.0.1', command: 'start' });
  });

  it('says that an address is not one of this machine', async () => {
    await expect(requirePort({ port: 4310, host: '192.0.2.1', command: 'start' })).rejects.toThrow('at 192.0.2.1 cannot be used');
  });
});

describe('databaseFile', () => {
  it.each([undefined, '', 'file:./x/y.db', 'file:/srv/x.db', 'file:///srv/x.db', 'file:x.db'])('reads %s as the environment does', (address) => {
    expect(databaseFile(address, '/home/p')).toBe(readEnv({ DATABASE_URL: address }, '/home/p').databaseFile);
  });

  it.each(['postgresql://localhost/x', 'x.db', 'file:', 'file:x.db?mode=ro'])('refuses %s as the environment does', (address) => {
    expect(() => databaseFile(address, '/home/p')).toThrow('DATABASE_URL must be the address of a SQLite file');
    expect(() => readEnv({ DATABASE_URL: address }, '/home/p')).toThrow('must be the address of a SQLite file');
  });
});

describe('requireWritable', () => {
  it('makes the folder and leaves nothing in it', () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'second-bench-')), 'a', 'b');
    requireWritable(folder, 'never said');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('names the folder and the remedy when a file is in the way', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'second-bench-')), 'file');
    writeFileSync(file, '');
    expect(() => requireWritable(join(file, 'data'), 'choose another')).toThrow(/The folder .*data cannot be written to \(E\w+\): choose another\./);
  });
});

describe('requireWritableDatabase', () => {
  it('takes a database that is still to be made', () => {
    const folder = mkdtempSync(join(tmpdir(), 'second-bench-'));
    requireWritableDatabase(join(folder, 'new', 'x.db'));
  });
});

describe('sameInstall', () => {
  const lock = { packages: { '': {}, a: { version: '1.0.0' }, b: { version: '2.0.0', optional: true } } };

  it('wants every package in its locked version', () => {
    expect(sameInstall(lock, { packages: { a: { version: '1.0.0' }, b: { version: '2.0.0' } } })).toBe(true);
    expect(sameInstall(lock, { packages: { a: { version: '1.0.1' }, b: { version: '2.0.0' } } })).toBe(false);
    expect(sameInstall(lock, { packages: { b: { version: '2.0.0' } } })).toBe(false);
  });

  it('does without the optional ones, which belong to other systems', () => {
    expect(sameInstall(lock, { packages: { a: { version: '1.0.0' } } })).toBe(true);
  });

  it('is false when nothing is installed', () => {
    expect(sameInstall(lock, null)).toBe(false);
  });
});
