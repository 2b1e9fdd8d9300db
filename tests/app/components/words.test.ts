import { describe, expect, it } from 'vitest';
import { capital, inSentence, joinWords } from '../../../app/_components/words';

describe('inSentence', () => {
  it.each([
    ['Clock crystal dead', 'clock crystal dead'],
    ['RF modulator dead', 'RF modulator dead'],
    ['5 V rail', '5 V rail'],
    ['A record', 'A record'],
    ['', ''],
  ])('writes %j as %j: abbreviations keep their capitals', (label, words) => expect(inSentence(label)).toBe(words));
});

describe('capital', () => {
  it('raises the first letter alone', () => expect(capital('video RAM')).toBe('Video RAM'));
});

describe('joinWords', () => {
  it('joins none, one, two and three', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((words) => joinWords(words))).toEqual(['', 'a', 'a and b', 'a, b and c']);
  });
});
