import { resolve } from 'node:path';
import { z } from 'zod';

/** The settings that the program runs with. */
export interface Env {
  mode: 'development' | 'production' | 'test';
  /** `file:` address of the SQLite database, its path absolute. */
  databaseUrl: string;
  /** The same as a path. */
  databaseFile: string;
}

const variables = z.object({
  NODE_ENV: z.enum(['development', 'production', 'test']).default('development'),
  DATABASE_URL: z
    .string()
    .regex(/^file:[^?]+$/, 'must be the address of a SQLite file, such as file:./data/second-bench.db')
    .default('file:./data/second-bench.db'),
});

/**
 * Reads the settings from environment variables. An empty variable counts as not set.
 *
 * @param source the variables, as in `process.env`.
 * @param folder absolute folder that a relative database path starts from.
 * @throws Error whose message is one sentence naming each wrong variable and what it must be.
 */
export function readEnv(source: Record<string, string | undefined>, folder: string): Env {
  const set = Object.fromEntries(Object.entries(source).filter(([, value]) => value !== undefined && value !== ''));
  const parsed = variables.safeParse(set);
  if (!parsed.success) {
    const faults = parsed.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
    throw new Error(`The environment has a wrong value: ${faults.join('; ')}.`);
  }
  const databaseFile = resolve(folder, parsed.data.DATABASE_URL.slice('file:'.length).replace(/^\/\/(?=\/)/, ''));
  return { mode: parsed.data.NODE_ENV, databaseUrl: `file:${databaseFile}`, databaseFile };
}

let current: Env | null = null;

/** This process's settings, read once; relative paths start at the project folder, where npm runs its scripts. */
export function getEnv(): Env {
  current ??= readEnv(process.env, process.cwd());
  return current;
}
