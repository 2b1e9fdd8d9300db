import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import type { PrismaClient } from '../../../prisma/generated/client';
import type { KnownWorld } from '../../../server/casebook/known-world';
import { runProgram } from '../../../server/cli/program';
import { randomCaseId } from '../../../server/ids';

export type CliRun = { code: number; out: string; err: string };

const PROJECT = fileURLToPath(new URL('../../..', import.meta.url));
const TSX = join(PROJECT, 'node_modules', 'tsx', 'dist', 'cli.mjs');

/** Runs the command line as its own process, as `npm run cli` does; `input` is its standard input. */
export function spawnCli(args: readonly string[], databaseUrl: string, input = ''): Promise<CliRun> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [TSX, 'server/cli/index.ts', ...args], {
      cwd: PROJECT,
      env: { ...process.env, DATABASE_URL: databaseUrl },
    });
    const out: string[] = [];
    const err: string[] = [];
    child.stdout.setEncoding('utf8').on('data', (text: string) => out.push(text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => err.push(text));
    child.on('error', reject);
    child.stdin.end(input);
    child.on('close', (code) => resolve({ code: code ?? -1, out: out.join(''), err: err.join('') }));
  });
}

/**
 * Runs the same program in this process, on an open database. `typed` is what it is told when it asks, `demoWorld` what is known of
 * the world of its cases.
 */
export async function runCli(db: PrismaClient, args: readonly string[], typed = '', demoWorld?: KnownWorld): Promise<CliRun> {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    db: () => db,
    search: () => {
      throw new Error('Search is run as its own process: use spawnCli.');
    },
    out: (text: string) => void out.push(text),
    err: (text: string) => void err.push(text),
    now: () => new Date('2026-01-02T03:04:05Z'),
    newId: randomCaseId,
    readSecret: async () => typed,
    actor: 'test',
    ...(demoWorld && { demoWorld: async () => demoWorld }),
  };
  const code = await runProgram(io, args);
  return { code, out: out.join(''), err: err.join('') };
}

/** A file of this test's own; removed when the test ends. */
export function temporaryFile(name: string, text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
