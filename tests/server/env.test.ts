import { describe, expect, it } from 'vitest';
import { readEnv } from '../../server/env';

describe('readEnv', () => {
  it('puts the database into the data folder of the project unless told otherwise', () => {
    expect(readEnv({}, '/home/bench/project')).toEqual({
      mode: 'development',
      databaseUrl: 'file:/home/bench/project/data/second-bench.db',
      databaseFile: '/home/bench/project/data/second-bench.db',
      siteUrl: null,
      trustProxy: false,
      sessionSecret: null,
      meilisearch: null,
      logLevel: 'info',
      metricsToken: null,
    });
  });

  it('makes a relative database path absolute', () => {
    expect(readEnv({ DATABASE_URL: 'file:other/x.db' }, '/p').databaseUrl).toBe('file:/p/other/x.db');
  });

  it('leaves an absolute path as it is, with or without the empty host of a file address', () => {
    expect(readEnv({ DATABASE_URL: 'file:/srv/x.db' }, '/p').databaseUrl).toBe('file:/srv/x.db');
    expect(readEnv({ DATABASE_URL: 'file:///srv/x.db' }, '/p').databaseUrl).toBe('file:/srv/x.db');
  });

  it('takes an empty variable as not set', () => {
    expect(readEnv({ DATABASE_URL: '' }, '/p').databaseUrl).toBe('file:/p/data/second-bench.db');
  });

  it('refuses another kind of database in one sentence that names the variable', () => {
    expect(() => readEnv({ DATABASE_URL: 'postgresql://localhost/x' }, '/p')).toThrow(
      'The environment has a wrong value: DATABASE_URL: must be the address of a SQLite file, such as file:./data/second-bench.db.',
    );
  });

  it('names every wrong variable at once', () => {
    expect(() => readEnv({ DATABASE_URL: 'x', NODE_ENV: 'staging' }, '/p')).toThrow(
      /NODE_ENV.*DATABASE_URL|DATABASE_URL.*NODE_ENV/,
    );
  });

  it('reads the address of the site, whether a proxy is there, and the session key', () => {
    const secret = 'x'.repeat(32);
    expect(readEnv({ SITE_URL: 'https://bench.example', TRUST_PROXY: '1', SESSION_SECRET: secret }, '/p')).toMatchObject({
      siteUrl: 'https://bench.example',
      trustProxy: true,
      sessionSecret: secret,
    });
  });

  it.each([
    [{ SITE_URL: 'bench.example' }, /SITE_URL: must be the address/],
    [{ TRUST_PROXY: 'yes' }, /TRUST_PROXY: must be 1 behind a proxy/],
    [{ SESSION_SECRET: 'short' }, /SESSION_SECRET: must be at least 32/],
    [{ MEILISEARCH_URL: 'http://127.0.0.1:7700' }, /MEILISEARCH_URL and MEILISEARCH_API_KEY go together/],
    [{ MEILISEARCH_URL: 'search', MEILISEARCH_API_KEY: 'k' }, /MEILISEARCH_URL: must be the address of the Meilisearch server/],
    [{ LOG_LEVEL: 'loud' }, /LOG_LEVEL: must be one of error, warn, info, debug, silent/],
    [{ METRICS_TOKEN: 'short' }, /METRICS_TOKEN: must be at least 20/],
  ])('refuses %j in one sentence', (source, sentence) => {
    expect(() => readEnv(source, '/p')).toThrow(sentence);
  });
});
