import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EMPTY_QUESTION, isBlank, type Question, questionHref, readQuestion } from '../../../app/_address/question';
import { FIX_RESULTS } from '../../../shared/schemas/case';
import type { Finding } from '../../../shared/schemas/finding';

const slug = fc.stringMatching(/^[a-z0-9]{1,6}(-[a-z0-9]{1,6}){0,3}$/);
const finding: fc.Arbitrary<Finding> = fc.oneof(
  fc.record({ kind: fc.constant('symptom' as const), id: slug, value: fc.constantFrom('present' as const, 'absent' as const) }),
  fc.record({ kind: fc.constant('check' as const), id: slug, value: slug }),
  fc.record({ kind: fc.constant('fix' as const), id: slug, value: fc.constantFrom(...FIX_RESULTS) }),
);
const key = fc.record({ kind: fc.constantFrom('symptom' as const, 'check' as const, 'fix' as const), id: slug });
const named = (thing: { kind: string; id: string }) => `${thing.kind}.${thing.id}`;
const words = fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }).filter((text) => text.trim() !== '');

const question: fc.Arbitrary<Question> = fc.record({
  text: fc.oneof(fc.constant(''), words),
  device: fc.option(slug),
  complete: fc.boolean(),
  set: fc.uniqueArray(finding, { selector: named, maxLength: 8 }),
  without: fc.uniqueArray(key, { selector: named, maxLength: 8 }),
  aside: fc.uniqueArray(words, { maxLength: 4 }),
  why: fc.option(slug),
});

/** The parameters of an address as a page gets them. */
function paramsOf(href: string): Record<string, string | string[]> {
  const search = new URL(href, 'http://localhost').searchParams;
  return Object.fromEntries([...new Set(search.keys())].map((name) => [name, search.getAll(name)]));
}

describe('readQuestion', () => {
  it('reads back every question that questionHref wrote', () => {
    fc.assert(
      fc.property(question, (asked) => {
        expect(readQuestion(paramsOf(questionHref('/', asked)))).toEqual(asked);
      }),
    );
  });

  it('throws for no address at all, and leaves out what says nothing', () => {
    const noise = fc.dictionary(
      fc.constantFrom('q', 'on', 'all', 'f', 'not', 'aside', 'why', 'x'),
      fc.oneof(fc.string(), fc.array(fc.string())),
    );
    fc.assert(
      fc.property(noise, (params) => {
        const read = readQuestion(params);
        expect(read.device === null || /^[a-z0-9-]+$/.test(read.device)).toBe(true);
        expect(readQuestion(paramsOf(questionHref('/', read)))).toEqual(read);
      }),
    );
  });

  it('takes the last word on a thing said twice', () => {
    const { set } = readQuestion({ f: ['check.clock-line.low', 'symptom.no-sound.present', 'check.clock-line.pulsing'] });
    expect(set.map((f) => `${f.id} ${f.value}`)).toEqual(['clock-line pulsing', 'no-sound present']);
  });

  it.each(['symptom.no-sound', 'symptom.no-sound.perhaps', 'part.u1.hot', 'check.a.b.c', 'check.Clock.low', ''])(
    'passes over the finding %j, which is none',
    (code) => expect(readQuestion({ f: code }).set).toEqual([]),
  );

  it('cuts words beyond what a look-up takes', () => {
    expect(readQuestion({ q: 'a'.repeat(5_000) }).text).toHaveLength(2_000);
  });
});

describe('isBlank', () => {
  it('holds for a device alone, and not for words or a finding', () => {
    expect(isBlank({ ...EMPTY_QUESTION, device: 'some-board' })).toBe(true);
    expect(isBlank({ ...EMPTY_QUESTION, text: ' \n' })).toBe(true);
    expect(isBlank({ ...EMPTY_QUESTION, text: 'dead' })).toBe(false);
    expect(isBlank({ ...EMPTY_QUESTION, set: [{ kind: 'symptom', id: 'dead', value: 'present' }] })).toBe(false);
  });
});
