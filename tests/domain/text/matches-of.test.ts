import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchesOf } from '../../../shared/domain/text/matches-of';

const PATTERNS = [/a+/g, /\b/g, /(?<it>\p{L})(\d)?/dgu, /x*/gu, /(?<=a)b|c$/gim, /😀?/gu];

describe('matchesOf', () => {
  it('gives what matchAll gives, groups, indices and empty matches included, however often it is asked', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'x', '1', ' ', '\n', 'é', '😀') });
    fc.assert(
      fc.property(fc.constantFrom(...PATTERNS), text, (pattern, words) => {
        const expected = [...words.matchAll(pattern)];
        for (let time = 0; time < 2; time += 1) {
          const found = matchesOf(words, pattern);
          expect(found).toEqual(expected);
          expect(found.map(({ index, indices, groups }) => [index, indices, groups])).toEqual(
            expected.map(({ index, indices, groups }) => [index, indices, groups]),
          );
        }
      }),
    );
  });

  it('refuses a pattern that would find its first match for ever', () => {
    expect(() => matchesOf('aa', /a/)).toThrow(TypeError);
  });
});
