import { describe, expect, it } from 'vitest';
import { createKeptBodies } from '../../../server/trpc/kept-bodies';
import { smallModel } from '../fixtures/small-model';

const body = (bytes: number) => ({ bytes: new Uint8Array(bytes), headers: [] as [string, string][], again: () => {} });

describe('kept bodies', () => {
  it('hold so many bytes, and drop the one not asked for longest', () => {
    const model = smallModel();
    const bodies = createKeptBodies(100);
    bodies.keep('a', model, body(40));
    bodies.keep('b', model, body(40));
    bodies.find('a', model);
    bodies.keep('c', model, body(40));
    expect(['a', 'b', 'c'].map((key) => bodies.find(key, model)?.bytes.length)).toEqual([40, undefined, 40]);
    // One in another's place is counted once; one that is too large by itself is not kept.
    bodies.keep('a', model, body(60));
    expect(['a', 'c'].map((key) => bodies.find(key, model)?.bytes.length)).toEqual([60, 40]);
    bodies.keep('d', model, body(101));
    expect(bodies.find('d', model)).toBeUndefined();
    bodies.keep('e', model, body(100));
    expect(bodies.find('e', model)?.bytes.length).toBe(100);
  });

  it('are of one model alone', () => {
    const [one, other] = [smallModel(), smallModel()];
    const bodies = createKeptBodies(100);
    bodies.keep('a', one, body(10));
    expect(bodies.find('a', other)).toBeUndefined();
    expect(bodies.find('a', one)).toBeUndefined();
  });
});
