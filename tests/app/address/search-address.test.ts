import { describe, expect, it } from 'vitest';
import { readSearch, searchHref } from '../../../app/_address/search-address';

describe('readSearch and searchHref', () => {
  it('are each other\'s inverse', () => {
    const search = { text: '"pulsing reset" -x', filters: { device: 'ormadic-duo', year: '2024', photos: 'yes' }, sort: 'newest' as const, from: 'WzEsImEiLDFd' };
    const address = searchHref(search);
    expect(address).toBe('/search?q=%22pulsing+reset%22+-x&on=ormadic-duo&year=2024&photos=yes&sort=newest&from=WzEsImEiLDFd');
    expect(readSearch(Object.fromEntries(new URLSearchParams(address.slice('/search?'.length))))).toEqual(search);
  });

  it('leave out what says nothing', () => {
    expect(readSearch({ q: '', year: 'next', category: 'toaster', on: '../etc', sort: 'up', photos: ['', 'yes'] })).toEqual({
      text: '',
      filters: { photos: 'yes' },
      sort: 'relevance',
      from: null,
    });
    expect(searchHref({ text: ' ', filters: {}, sort: 'relevance', from: null })).toBe('/search');
  });
});
