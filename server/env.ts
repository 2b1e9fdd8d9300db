import { resolve } from 'node:path';
import { z } from 'zod';

/** The settings that the program runs with. */
export interface Env {
  mode: 'development' | 'production' | 'test';
  /** `file:` address of the SQLite database, its path absolute. */
  databaseUrl: string;
  /** The same as a path. */
  databaseFile: string;
  /** Address that visitors use, such as https://bench.example; null to go by each request's own. */
  siteUrl: string | null;
  /** Whether a proxy in front adds the visitor's address, host and protocol (the X-Forwarded headers). */
  trustProxy: boolean;
  /** The Meilisearch server that searches go to; null to search with SQLite alone. */
  meilisearch: { url: string; apiKey: string } | null;
  /** Key that session cookies are signed with; null to keep one in a file beside the database. */
  sessionSecret: string | null;
  /** The least grave lines that go to the log. */
  logLevel: (typeof LOG_LEVELS)[number];
  /** What a program that collects the metrics has to send as its bearer token; null where keepers alone may read them. */
  metricsToken: string | null;
}

const LOG_LEVELS = ['error', 'warn', 'info', 'debug', 'silent'] as const;

const variables = z.object({
  NODE_ENV: z.enum(['development', 'production', 'test']).default('development'),
  DATABASE_URL: z
    .string()
    .regex(/^file:[^?]+$/, 'must be the address of a SQLite file, such as file:./data/second-bench.db')
    .default('file:./data/second-bench.db'),
  SITE_URL: z
    .url({ protocol: /^https?$/, error: 'must be the address that visitors use, such as https://bench.example' })
    .optional(),
  TRUST_PROXY: z
    .enum(['0', '1'], { error: 'must be 1 behind a proxy that sets the X-Forwarded headers, otherwise 0' })
    .default('0'),
  MEILISEARCH_URL: z
    .url({ protocol: /^https?$/, error: 'must be the address of the Meilisearch server, such as http://127.0.0.1:7700' })
    .optional(),
  MEILISEARCH_API_KEY: z.string().min(1).optional(),
  SESSION_SECRET: z.string().min(32, 'must be at least 32 characters that nobody can guess').optional(),
  LOG_LEVEL: z.enum(LOG_LEVELS, { error: `must be one of ${LOG_LEVELS.join(', ')}` }).default('info'),
  METRICS_TOKEN: z.string().min(20, 'must be at least 20 characters that nobody can guess').optional(),
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
  const { MEILISEARCH_URL: searchUrl, MEILISEARCH_API_KEY: searchKey } = parsed.data;
  if ((searchUrl === undefined) !== (searchKey === undefined)) {
    throw new Error('The environment has a wrong value: MEILISEARCH_URL and MEILISEARCH_API_KEY go together; set both or neither.');
  }
  return {
    mode: parsed.data.NODE_ENV,
    databaseUrl: `file:${databaseFile}`,
    databaseFile,
    siteUrl: parsed.data.SITE_URL ?? null,
    trustProxy: parsed.data.TRUST_PROXY === '1',
    sessionSecret: parsed.data.SESSION_SECRET ?? null,
    meilisearch: searchUrl !== undefined && searchKey !== undefined ? { url: searchUrl, apiKey: searchKey } : null,
    logLevel: parsed.data.LOG_LEVEL,
    metricsToken: parsed.data.METRICS_TOKEN ?? null,
  };
}

let current: Env | null = null;

/** This process's settings, read once; relative paths start at the project folder, where npm runs its scripts. */
export function getEnv(): Env {
  current ??= readEnv(process.env, process.cwd());
  return current;
}
