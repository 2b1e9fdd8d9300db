import { beforeAll, describe, expect, it } from 'vitest';
import type { IndexState, SearchEngine } from '../../../../server/search/search-engine';
import { batchesOf, query } from '../small-index';
import { contractDocument, contractDocuments, idOf } from './contract-cases';
import { contractQueries, type Expectation, hostileTexts } from './contract-queries';

const START: IndexState = { cursor: 7, cursorCase: idOf('a'), fingerprint: 'contract' };
const at = (cursor: number): IndexState => ({ ...START, cursor });

/** A server of its own takes up to a second per task, and some tests make the index anew three times. */
const WRITES_MS = 120_000;

const letters = (hits: readonly { id: string }[]) => hits.map((hit) => hit.id[0]).join('');
const sorted = (text: string) => [...text].sort().join('');

/** What every engine must do; `open` gives an engine on an index of its own. */
export function engineContract(name: string, open: () => SearchEngine): void {
  describe(`${name}: the contract of a search engine`, { timeout: WRITES_MS }, () => {
    let engine: SearchEngine;
    const fillAnew = () => engine.rebuild(batchesOf(contractDocuments, 5), START);
    beforeAll(async () => {
      engine = open();
      await fillAnew();
    }, 120_000);

    it.each(contractQueries.map((q) => [q.because, q] as const))('%s', async (_because, expected: Expectation) => {
      const { text = '', filters = {}, sort = 'relevance' } = expected;
      const result = await engine.search(query({ text, filters, sort, take: 50 }));
      const found = letters(result.hits);
      expect(result.total).toBe(result.hits.length);
      if (expected.exactly !== undefined) expect(sorted(found)).toBe(sorted(expected.exactly));
      if (expected.first !== undefined) expect(found[0]).toBe(expected.first);
      if (expected.order !== undefined) expect(found.slice(0, expected.order.length)).toBe(expected.order);
      for (const letter of expected.has ?? '') expect(found).toContain(letter);
      for (const letter of expected.lacks ?? '') expect(found).not.toContain(letter);
    });

    it.each(Object.entries(hostileTexts))('answers %s', async (_name, text) => {
      const result = await engine.search(query({ text }));
      expect(result.total).toBeGreaterThanOrEqual(result.hits.length);
      // And without the cut that every door makes before.
      await engine.search({ ...query({}), text });
      expect(letters((await engine.search(query({ text: '"goo under three"' }))).hits)).toBe('m');
    });

    it('shows what matched as plain text and places in it, never as marks or markup', async () => {
      const { hits } = await engine.search(query({ text: 'membrane' }));
      const { snippet = '', highlights = [] } = hits[0] ?? {};
      expect(highlights.map(([start, end]) => snippet.slice(start, end).toLowerCase())).toEqual(['membrane']);
      expect(snippet).toContain('<b>Not</b>');
      expect(snippet).not.toMatch(/[\ue000\ue001]|&lt;|<em>|<mark>/);
    });

    it('counts the values of every filter, its own choice aside', async () => {
      const { facets } = await engine.search(query({ text: 'alcohol', filters: { device: ['bramfield-halo'] } }));
      expect(facets?.device).toEqual({ 'bramfield-halo': 1, 'bramfield-halo-rev-1': 1, 'ormadic-duo': 1, 'ormadic-duo-rev-2': 1 });
      expect(facets?.year).toEqual({ '2025': 1 });
      expect(facets?.photos).toEqual({ no: 1 });
      expect(facets?.symptom).toEqual({ 'disc-not-read': 1 });
      const all = await engine.search(query({}));
      expect(all.facets?.category).toEqual({ 'home-computer': 6, console: 5, handheld: 1, 'arcade-board': 1, monitor: 1, drive: 2 });
      expect(all.facets?.proof).toEqual({ substitution: 4, measurement: 3, 'repair-held': 7, suspected: 1, none: 1 });
    });

    it('pages through everything, each case once, in the order of one long list', async () => {
      for (const parts of [{}, { text: 'the' }, { text: 'quellbrook' }, { sort: 'oldest' as const }]) {
        const whole = letters((await engine.search(query({ ...parts, take: 50 }))).hits);
        let pages = '';
        let cursor: string | null = null;
        do {
          const page = await engine.search(query({ ...parts, take: 3, cursor }));
          pages += letters(page.hits);
          cursor = page.next;
        } while (cursor !== null && pages.length < 60);
        expect(pages).toBe(whole);
      }
    });

    it('starts at the beginning for a cursor that it did not write', async () => {
      const first = letters((await engine.search(query({ take: 3 }))).hits);
      for (const cursor of ['x', '!!!', Buffer.from('[1,2').toString('base64url'), Buffer.from('[null,null,-1]').toString('base64url')]) {
        expect(letters((await engine.search(query({ take: 3, cursor }))).hits)).toBe(first);
      }
    });

    it('takes in new, changed and removed cases, and says how far it is', async () => {
      const changed = contractDocument('m', { narrative: 'Nothing but quicksilver under the cans.', month: '2020-02' });
      expect(await engine.apply({ put: [changed], remove: [idOf('n'), 'zzzzzzzzzzzzzzzz'] }, START, at(8))).toBe(true);
      expect(await engine.state()).toEqual(at(8));
      expect((await engine.search(query({ text: '"goo under three"' }))).total).toBe(0);
      expect(letters((await engine.search(query({ text: 'quicksilver' }))).hits)).toBe('m');
      expect((await engine.search(query({ text: '"membrane was cracked"' }))).total).toBe(0);
      expect((await engine.search(query({ filters: { year: ['2020'] } }))).total).toBe(1);
      expect((await engine.search(query({}))).total).toBe(15);
      expect(await engine.apply({ put: [contractDocument('m'), contractDocument('n')], remove: [] }, at(8), at(9))).toBe(true);
      expect(letters((await engine.search(query({ text: '"goo under three"' }))).hits)).toBe('m');
    });

    it('refuses a change from a state at which it does not stand', async () => {
      await fillAnew();
      expect(await engine.apply({ put: [], remove: [idOf('m')] }, at(3), at(4))).toBe(false);
      expect((await engine.search(query({ text: '"goo under three"' }))).total).toBe(1);
      expect(await engine.state()).toEqual(START);
    });

    it('answers from the old index until the new one is complete, then from that alone', async () => {
      let seenMeanwhile = 0;
      async function* slowly() {
        yield [contractDocument('a')];
        seenMeanwhile = (await engine.search(query({}))).total;
        yield [contractDocument('b')];
      }
      await engine.rebuild(slowly(), at(20));
      expect(seenMeanwhile).toBe(16);
      expect(sorted(letters((await engine.search(query({}))).hits))).toBe('ab');
      expect(await engine.state()).toEqual(at(20));
      await fillAnew();
      expect((await engine.search(query({}))).total).toBe(16);
    });

    it('keeps the old index where making a new one fails', async () => {
      async function* broken() {
        yield [contractDocument('a')];
        throw new Error('the disk is full');
      }
      await expect(engine.rebuild(broken(), at(30))).rejects.toThrow('the disk is full');
      expect((await engine.search(query({}))).total).toBe(16);
      expect(await engine.state()).toEqual(START);
      await fillAnew();
    });
  });
}
