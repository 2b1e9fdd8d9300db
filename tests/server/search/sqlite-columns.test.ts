import { join } from 'node:path';
import { expect, it } from 'vitest';
import { FILTER_NAMES } from '../../../shared/schemas/search';
import type { IndexState } from '../../../server/search/search-engine';
import { smallCases } from '../fixtures/small-cases';
import { batchesOf, fill, query, smallDocument, sqliteEngine, temporaryFolder } from './small-index';

const at = (cursor: number): IndexState => ({ cursor, cursorCase: null, fingerprint: 'small' });

it('follows in memory what another process writes into the same file: additions, changes, removals, a new index', async () => {
  const path = join(temporaryFolder(), 'index');
  const documents = smallCases(40).map(smallDocument);
  const [reader, writer] = [sqliteEngine(path), sqliteEngine(path)];
  const answers = async (engine: typeof reader) => [
    await engine.search(query({ take: 100 })),
    await engine.search(query({ text: 'screen', take: 100 })),
    await engine.search(query({ filters: { outcome: ['resolved'] }, sort: 'oldest', take: 100 })),
  ];
  const isSameAsFresh = async () => {
    const seen = await answers(reader);
    expect(seen).toEqual(await answers(sqliteEngine(path)));
    return seen;
  };
  await fill(writer, documents.slice(0, 30));
  expect((await isSameAsFresh())[0]?.total).toBe(30);
  await writer.apply({ put: documents.slice(30), remove: [] }, at(0), at(1));
  expect((await isSameAsFresh())[0]?.total).toBe(40);
  // The newest goes and another comes: its number in the full text is not given again.
  await writer.apply({ put: [], remove: [documents[39]?.id as string] }, at(1), at(2));
  await writer.apply({ put: [{ ...(documents[38] as (typeof documents)[number]), outcome: 'unresolved', month: '1999-01', year: '1999' }], remove: [] }, at(2), at(3));
  const changed = await isSameAsFresh();
  expect(changed[0]?.total).toBe(39);
  expect(changed[0]?.facets?.year['1999']).toBe(1);
  // The same state as before, but another index.
  await writer.rebuild(batchesOf(documents.slice(0, 3)), at(3));
  const anew = await isSameAsFresh();
  expect(anew[0]?.total).toBe(3);
  for (const name of FILTER_NAMES) expect(Object.values(anew[0]?.facets?.[name] ?? {}).every((count) => count <= 3)).toBe(true);
});
