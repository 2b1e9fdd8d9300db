import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { caseFeed } from '../../../server/feeds/case-feed';
import type { CaseListItem } from '../../../shared/schemas/case-view';

const item = (letter: string, month: string, excerpt = 'Came in grey.'): CaseListItem => ({
  id: letter.repeat(16),
  month,
  device: { slug: 'quellbrook-8', label: 'Quellbrook 8' },
  symptoms: ['Grey screen'],
  causes: [{ id: 'crystal-dead', label: 'Crystal dead', designators: ['Y1'] }],
  outcome: 'resolved',
  excerpt,
});

const origin = 'https://bench.example';
const feedOf = (cases: CaseListItem[]) =>
  caseFeed({
    title: 'New cases: Grey screen · Second Bench',
    self: `${origin}/symptoms/grey-screen/feed.atom`,
    page: `${origin}/symptoms/grey-screen`,
    origin,
    cases,
    emptySince: '2026-11',
  });

type Link = { '@rel': string; '@href': string; '@type': string };
type Entry = { id: string; title: string; updated: string; link: Link; summary: string };
type Feed = { '@xmlns': string; id: string; title: string; updated: string; author: { name: string }; link: Link[]; entry?: Entry[] };

const read = (text: string): Feed =>
  (
    new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: '@',
      isArray: (name) => name === 'entry',
      processEntities: true,
    }).parse(text) as { feed: Feed }
  ).feed;

/** RFC 3339, section 5.6, as RFC 4287, section 3.3, asks for: with a capital T and Z. */
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/;

describe('caseFeed', () => {
  it('has what RFC 4287, section 4.1, requires of a feed and of its entries', () => {
    const text = feedOf([item('b', '2026-10'), item('a', '2026-09')]);
    expect(XMLValidator.validate(text)).toBe(true);
    const feed = read(text);
    expect(feed['@xmlns']).toBe('http://www.w3.org/2005/Atom');
    // 4.1.1: exactly one id, title and updated; an author where entries have none; a link to itself.
    for (const value of [feed.id, feed.title, feed.updated, feed.author.name]) expect(typeof value).toBe('string');
    expect(feed.updated).toBe('2026-10-01T00:00:00Z');
    expect(feed.link.filter((link) => link['@rel'] === 'self').map((link) => link['@href'])).toEqual([
      `${origin}/symptoms/grey-screen/feed.atom`,
    ]);
    // 4.1.2: the same for each entry, and one alternate link of a type and language.
    for (const entry of feed.entry ?? []) {
      expect(entry.updated).toMatch(INSTANT);
      expect(entry.title.length).toBeGreaterThan(0);
      expect(entry.link['@rel']).toBe('alternate');
      expect(entry.id).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    }
    const ids = [feed.id, ...(feed.entry ?? []).map((entry) => entry.id)];
    expect(new Set(ids).size).toBe(3);
  });

  it('keeps an entry by its id wherever and whenever the feed is made, as section 4.2.6 asks', () => {
    const [first] = read(feedOf([item('b', '2026-10')])).entry ?? [];
    const elsewhere = caseFeed({
      title: 'Other',
      self: 'http://localhost:3000/cases/feed.atom',
      page: 'http://localhost:3000/cases',
      origin: 'http://localhost:3000',
      cases: [item('b', '2026-11')],
      emptySince: '2026-11',
    });
    expect(read(elsewhere).entry?.[0]?.id).toBe(first?.id);
  });

  it('says nothing finer than the month, and says it of a feed without entries, too', () => {
    const text = feedOf([item('b', '2026-10')]);
    expect(text.match(/\d{4}-\d{2}-\d{2}T[^<]*/g)?.every((time) => time.endsWith('-01T00:00:00Z'))).toBe(true);
    const empty = read(feedOf([]));
    expect(empty.entry).toBeUndefined();
    expect(empty.updated).toBe('2026-11-01T00:00:00Z');
  });

  it('carries any text whole', () => {
    const told = 'Pin 3 < 0.8 V & "low"; <b>not bold</b> ]]>';
    expect(read(feedOf([item('b', '2026-10', told)])).entry?.[0]?.summary).toBe(told);
  });
});
