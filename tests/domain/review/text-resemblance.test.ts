import { describe, expect, it } from 'vitest';
import { containment, resemblance, shinglesOf } from '../../../shared/domain/review/text-resemblance';

describe('shinglesOf', () => {
  it('gives the runs of words, each once', () => {
    // The worked example of Broder 1997, section 2: the 4-shingling of "a rose is a rose is a rose" has three members.
    expect([...shinglesOf('a rose is a rose is a rose', 4)].sort()).toEqual(['a rose is a', 'is a rose is', 'rose is a rose'].sort());
  });

  it('takes a text shorter than a shingle as one, and an empty one as none', () => {
    expect([...shinglesOf('Dead.')]).toEqual(['dead']);
    expect(shinglesOf(' … ').size).toBe(0);
  });
});

describe('resemblance', () => {
  it('is the shared part of all, containment the shared part of the smaller; both 1 for the same and 0 for nothing shared', () => {
    const a = shinglesOf('one two three four five', 2);
    const b = shinglesOf('two three four', 2);
    expect(resemblance(a, b)).toBe(2 / 4);
    expect(containment(a, b)).toBe(1);
    expect(resemblance(a, a)).toBe(1);
    expect(resemblance(a, shinglesOf('six seven', 2))).toBe(0);
    expect(resemblance(new Set(), new Set())).toBe(0);
  });
});
