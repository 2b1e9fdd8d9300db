import { describe, expect, it } from 'vitest';
import {
  withAside,
  withFinding,
  withoutAside,
  withoutFinding,
  withRestored,
  withWords,
} from '../../../app/_address/edit-question';
import { EMPTY_QUESTION } from '../../../app/_address/question';

const present = { kind: 'symptom', id: 'no-sound', value: 'present' } as const;
const absent = { ...present, value: 'absent' } as const;

describe('withFinding', () => {
  it('gives way to what is said later about the same thing', () => {
    expect(withFinding(withFinding(EMPTY_QUESTION, present), absent).set).toEqual([absent]);
  });

  it('brings back a thing that was taken out', () => {
    const out = withoutFinding(EMPTY_QUESTION, present, true);
    expect(withFinding(out, absent)).toMatchObject({ set: [absent], without: [] });
  });
});

describe('withoutFinding', () => {
  it('keeps out what the words hold, and forgets what only the address held', () => {
    expect(withoutFinding(EMPTY_QUESTION, present, true).without).toEqual([{ kind: 'symptom', id: 'no-sound' }]);
    expect(withoutFinding(withFinding(EMPTY_QUESTION, present), present, false)).toEqual(EMPTY_QUESTION);
  });

  it('is undone by putting back', () => {
    expect(withRestored(withoutFinding(EMPTY_QUESTION, present, true), present)).toEqual(EMPTY_QUESTION);
  });
});

describe('withAside', () => {
  it('sets a stretch of words aside once, and is undone', () => {
    const aside = withAside(withAside(EMPTY_QUESTION, 'hums a bit'), 'hums a bit');
    expect(aside.aside).toEqual(['hums a bit']);
    expect(withoutAside(aside, 'hums a bit')).toEqual(EMPTY_QUESTION);
  });
});

describe('withWords', () => {
  it('joins more words with a comma, and nothing for blank ones', () => {
    const asked = { ...EMPTY_QUESTION, text: 'grey screen ' };
    expect(withWords(asked, ' hums ').text).toBe('grey screen, hums');
    expect(withWords(EMPTY_QUESTION, 'hums').text).toBe('hums');
    expect(withWords(asked, '  ')).toBe(asked);
  });
});
