import { afterAll, describe, expect, it } from 'vitest';
import { Meilisearch } from 'meilisearch';
import { createMeilisearchEngine } from '../../../../server/search/meilisearch';
import { engineContract } from './engine-contract';

declare module 'vitest' {
  interface TaskMeta {
    /** A sentence for the last lines of the whole run. */
    told?: string;
  }
}

const { MEILISEARCH_URL: url, MEILISEARCH_API_KEY: apiKey } = process.env;

if (url && apiKey) {
  const prefix = `second-bench-test-${process.pid}`;
  engineContract('Meilisearch', () => createMeilisearchEngine({ url, apiKey, prefix, searchTimeoutMs: 10_000 }));
  it('ran against a real server', async ({ task }) => {
    const { pkgVersion } = await new Meilisearch({ host: url, apiKey }).getVersion();
    task.meta.told = `Search: the contract ran against SQLite and against the Meilisearch ${pkgVersion} server that MEILISEARCH_URL names.`;
    expect(pkgVersion).toMatch(/^\d+\./);
  });
  afterAll(async () => {
    const client = new Meilisearch({ host: url, apiKey });
    for (const name of ['cases', 'cases-next', 'state']) await client.deleteIndexIfExists(`${prefix}-${name}`);
  });
} else {
  describe('Meilisearch: the contract of a search engine', () => {
    it('has no server here, so that its client alone was tested, over HTTP against a stand-in', ({ task }) => {
      task.meta.told =
        'Search: the contract ran against SQLite; the Meilisearch client was tested over HTTP against a stand-in. For a real server set MEILISEARCH_URL and MEILISEARCH_API_KEY.';
      expect(Boolean(url) && Boolean(apiKey)).toBe(false);
    });
  });
}
