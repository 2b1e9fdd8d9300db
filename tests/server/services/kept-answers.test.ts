import { describe, expect, it } from 'vitest';
import { createKeptAnswers } from '../../../server/services/kept-answers';

function counting() {
  let done = 0;
  const kept = createKeptAnswers<number>(2);
  const ask = (key: string, revision = 1) => kept.answer({ key, revision }, async () => (done += 1));
  return { ask, kept };
}

describe('kept answers', () => {
  it('are worked out once for each question, until what they rest on changes', async () => {
    const { ask } = counting();
    expect(await Promise.all([ask('a'), ask('a'), ask('b')])).toEqual([1, 1, 2]);
    expect(await ask('a')).toBe(1);
    expect(await ask('a', 2)).toBe(3);
    expect(await ask('b', 2)).toBe(4);
  });

  it('make room by dropping the one not asked for longest', async () => {
    const { ask } = counting();
    await ask('a');
    await ask('b');
    await ask('a');
    await ask('c');
    expect(await ask('a')).toBe(1);
    expect(await ask('b')).toBe(4);
  });

  it('are tried again after a failure', async () => {
    const { kept } = counting();
    const asked = { key: 'a', revision: 1 };
    await expect(kept.answer(asked, () => Promise.reject(new Error('disk')))).rejects.toThrow('disk');
    expect(await kept.answer(asked, async () => 7)).toBe(7);
  });
});
