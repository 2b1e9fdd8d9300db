import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../seed/catalogue';
import { vocabulary } from '../../../seed/vocabulary';
import { findPersonalDetails } from '../../../shared/domain/anonymise/find-personal-details';
import { knownWordsOf } from '../../../shared/domain/anonymise/known-words';
import { replaceDetails } from '../../../shared/domain/anonymise/replace-details';
import firstHalf from './lines-first-half.json';

const PATIENCE_MS = 60_000;
const known = knownWordsOf(vocabulary, catalogue);

const part = fc.oneof(
  fc.constantFrom(...firstHalf.flatMap(({ text }) => [text, ...text.split(' ')])),
  fc.constantFrom('@', '.', ':', '-', '+', '(', '[', ' ', '\n', '0', '5', 'A.', 'Mr', 'May', '192.0.2.', '01632 960', '::', 'www.'),
  fc.string({ maxLength: 6, unit: 'binary' }),
);
const talk = fc.tuple(fc.array(part, { maxLength: 14 }), fc.constantFrom('', ' ', ', ')).map(([parts, glue]) => parts.join(glue));

describe('findPersonalDetails', () => {
  it('gives spans inside the text, sorted and apart, with their text, whatever it is given', { timeout: PATIENCE_MS }, () => {
    fc.assert(
      fc.property(fc.oneof(talk, fc.string({ unit: 'binary', maxLength: 200 })), (text) => {
        let last = 0;
        for (const { start, end, text: found, suggestion } of findPersonalDetails(text, known)) {
          expect(start).toBeGreaterThanOrEqual(last);
          expect(end).toBeGreaterThan(start);
          expect(end).toBeLessThanOrEqual(text.length);
          expect(found).toBe(text.slice(start, end));
          expect(suggestion).not.toBe('');
          last = end;
        }
      }),
      { numRuns: 300 },
    );
  });

  const SLOWEST = {
    'bench lines': firstHalf.map(({ text }) => text).join('\n'),
    'at signs': '@',
    'dotted letters': 'a.',
    'digits with blanks': '0 1 ',
    'capital words': 'Aa ',
    'hexadecimal pairs': '3e:',
    'one long word': 'a',
    'small words': 'de la ',
    'a number and small words': '1 rue de la ',
    'mail without an end': 'a@b.',
    'capitals and dots': 'A. ',
    'colons': ':',
    'word, blank, number': 'Aa 1 ',
    'line ends': '\n',
    'blanks': ' ',
    'cue words': 'serial no. ',
  };

  it.each(Object.entries(SLOWEST))('reads 100 kB of %s in less than 300 ms of processor time', { retry: 2 }, (_name, unit) => {
    const text = unit.repeat(Math.ceil(100_000 / unit.length)).slice(0, 100_000);
    findPersonalDetails(text.slice(0, 2000), known);
    const before = process.cpuUsage();
    findPersonalDetails(text, known);
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(300);
  });
});

describe('replaceDetails', () => {
  it('leaves nothing direct of the kinds that it replaced', { timeout: PATIENCE_MS }, () => {
    fc.assert(
      fc.property(talk, (text) => {
        const details = findPersonalDetails(text, known);
        const replaced = replaceDetails(text, details);
        const kinds = new Set(details.map(({ kind }) => kind));
        expect(findPersonalDetails(replaced, known).filter(({ kind, certainty }) => certainty === 'direct' && kinds.has(kind))).toEqual([]);
      }),
      { numRuns: 300, seed: 20_261_125 },
    );
  });

  it('does not make a date of a month and the digit beside it', () => {
    const text = '5 5/23/19';
    const replaced = replaceDetails(text, findPersonalDetails(text, known));
    expect(findPersonalDetails(replaced, known)).toEqual([]);
  });

  it('changes nothing in a text without details', () => {
    expect(replaceDetails('R12 open, Q3 2N3904 short', [])).toBe('R12 open, Q3 2N3904 short');
  });

  it('keeps month and year of a date and names the kind of anything else', () => {
    const text = 'Mail tom@bench.example, bought 2021-05-03, or on 03/04/2021, from my mate Dave.';
    expect(replaceDetails(text, findPersonalDetails(text, known))).toBe(
      'Mail [mail address], bought May 2021, or on 2021, from my mate [name].',
    );
  });
});
