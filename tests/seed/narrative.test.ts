import { beforeAll, describe, expect, it, vi } from 'vitest';
import { demoWorld } from '../../seed/demo-world';
import { expand } from '../../seed/narrative/expand';
import { seededRandom } from '../../seed/random';

// Whole worlds are drawn here: seconds on an idle machine, more on a busy one.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const words = (text: string): string[] => text.toLowerCase().match(/[a-z0-9']+/g) ?? [];

/** Runs of five words, as they stand. */
const runs = (text: string): string[] =>
  words(text).flatMap((_, i, all) => (i + 5 <= all.length ? [all.slice(i, i + 5).join(' ')] : []));

describe('narratives', () => {
  let texts: string[] = [];
  let cases: ReturnType<typeof demoWorld.drawCases> = [];
  beforeAll(() => {
    cases = demoWorld.drawCases(21, 1000);
    texts = cases.map(({ content }) => content.narrative);
  });

  it('are never empty and never twice the same', () => {
    expect(texts.every((text) => text.length > 8)).toBe(true);
    expect(new Set(texts).size).toBe(texts.length);
  });

  it('vary in length from a line to several paragraphs', () => {
    const lengths = texts.map((text) => words(text).length).sort((a, b) => a - b);
    const at = (share: number) => lengths[Math.floor(share * lengths.length)] as number;
    expect(at(0.1)).toBeLessThan(16);
    expect(at(0.5)).toBeGreaterThan(30);
    expect(at(0.95)).toBeGreaterThan(120);
    expect(texts.filter((text) => text.includes('\n')).length / texts.length).toBeGreaterThan(0.15);
  });

  it('begin in many ways', () => {
    const beginnings = new Map<string, number>();
    for (const text of texts) {
      const first = words(text).slice(0, 2).join(' ');
      beginnings.set(first, (beginnings.get(first) ?? 0) + 1);
    }
    expect(Math.max(...beginnings.values()) / texts.length).toBeLessThan(0.04);
    expect(beginnings.size).toBeGreaterThan(300);
  });

  it('show no template on a page of ten: few runs of five words come back', () => {
    const repeated = Array.from({ length: 100 }, (_, page) => {
      const all = texts.slice(page * 10, page * 10 + 10).flatMap((text) => [...new Set(runs(text))]);
      return 1 - new Set(all).size / all.length;
    });
    expect(repeated.reduce((a, b) => a + b, 0) / repeated.length).toBeLessThan(0.01);
    expect(Math.max(...repeated)).toBeLessThan(0.05);
  });

  it('leave no slot unfilled and say nothing of persons, places, dates and addresses', () => {
    for (const text of texts) {
      expect(text).not.toMatch(/[<{|}]|undefined|null/);
      expect(text).not.toMatch(/@|https?:|www\.|\b(19|20)[0-9]{2}\b/);
    }
  });

  it('name no part that the case does not name', () => {
    for (const { content } of cases) {
      const named = new Set([
        ...content.causes.flatMap((cause) => cause.designators),
        ...content.steps.flatMap((step) => (step.kind === 'check' ? [step.designator] : step.fixes.map((fix) => fix.designator))),
      ]);
      for (const designator of content.narrative.match(/\b(U|VR|RV|XU|KB|BT|HD|RN)[0-9]{1,2}\b/g) ?? [])
        expect(named).toContain(designator);
    }
  });
});

describe('expand', () => {
  it('chooses, nests and fills slots', () => {
    const random = seededRandom(1);
    const seen = new Set(Array.from({ length: 200 }, () => expand(random, '{a|b {c|<x>}|}!', { x: 'd' })));
    expect([...seen].sort()).toEqual(['!', 'a!', 'b c!', 'b d!']);
  });

  it('refuses an open brace and a slot without text', () => {
    expect(() => expand(seededRandom(1), '{a|b')).toThrow('left open');
    expect(() => expand(seededRandom(1), '<x>')).toThrow('No text');
  });
});
