import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseWords, TERMS_MAX } from '../../../shared/domain/search/parse-words';
import { readMarks } from '../../../shared/domain/search/read-marks';

/** Any code points, with the marks that mean something among them. */
const anyText = fc
  .array(fc.oneof(fc.constantFrom('"', '-', ' ', 'a'), fc.integer({ min: 0, max: 0x10ffff }).map((code) => String.fromCodePoint(code))), { maxLength: 80 })
  .map((characters) => characters.join(''));

const said = (text: string) => parseWords(text).map(({ words, quoted, not, open }) => [words.join(' '), quoted, not, open]);

describe('parseWords', () => {
  it('takes words, phrases and what is left out', () => {
    expect(said('Grey "pulsing reset" -monitor ')).toEqual([
      ['grey', false, false, false],
      ['pulsing reset', true, false, false],
      ['monitor', false, true, false],
    ]);
  });

  it('keeps the last word open while it is being typed', () => {
    expect(said('grey scr')).toEqual([
      ['grey', false, false, false],
      ['scr', false, false, true],
    ]);
  });

  it('keeps what a mark joins together, and does not take a rail for something left out', () => {
    expect(said('known-good -12V ')).toEqual([
      ['known good', false, false, false],
      ['12v', false, false, false],
    ]);
  });

  it('passes over words that say nothing, unless there are no others', () => {
    expect(said('the lens of the drive ').map(([words]) => words)).toEqual(['lens', 'drive']);
    expect(said('the ').map(([words]) => words)).toEqual(['the']);
  });

  it('returns for any text a bounded number of plain words', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const terms = parseWords(text);
        expect(terms.length).toBeLessThanOrEqual(TERMS_MAX);
        expect(terms.flatMap((term) => term.words).filter((word) => !/^[\p{L}\p{N}][\p{L}\p{N}\p{M}]*$/u.test(word))).toEqual([]);
      }),
    );
  });
});

describe('readMarks', () => {
  it('gives the plain text and the places of the marks', () => {
    expect(readMarks('a \ue000grey\ue001\n screen')).toEqual({ snippet: 'a grey screen', highlights: [[2, 6]] });
  });

  it('does not stumble over marks that do not pair', () => {
    expect(readMarks('\ue001a \ue000\ue000b\ue001 \ue000c')).toEqual({ snippet: 'a b c', highlights: [[2, 3]] });
  });
});
