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
    const client = new Meilisearch({ host: url, apiKey });
    // A key that may only search and write is not told the version.
    const version = await client.getVersion().then(({ pkgVersion }) => pkgVersion, () => 'of unknown version');
    task.meta.told = `Search: the contract ran against SQLite and against the Meilisearch server (${version}) that MEILISEARCH_URL names.`;
    expect(await client.isHealthy()).toBe(true);
  });
  afterAll(async () => {
    const client = new Meilisearch({ host: url, apiKey, defaultWaitOptions: { timeout: 30_000 } });
    for (const name of ['cases', 'cases-next', 'state']) await client.deleteIndex(`${prefix}-${name}`).waitTask();
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
