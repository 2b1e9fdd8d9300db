import { describe, expect, it } from 'vitest';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { retractCase } from '../../../shared/domain/casebook/casebook-model';
import { createKeptBodies } from '../../../server/front/kept-bodies';
import { smallCases } from '../fixtures/small-cases';
import { smallModel } from '../fixtures/small-model';

const body = (size: number) => ({ size });
const counted = (model: CasebookModel) => ({ model, revision: model.counts.revision });

describe('kept bodies', () => {
  it('hold so many bytes, and drop the one not asked for longest', () => {
    const model = smallModel();
    const bodies = createKeptBodies(100);
    bodies.keep('a', counted(model), body(40));
    bodies.keep('b', counted(model), body(40));
    bodies.find('a', model);
    bodies.keep('c', counted(model), body(40));
    expect(['a', 'b', 'c'].map((key) => bodies.find(key, model)?.size)).toEqual([40, undefined, 40]);
    // One in another's place is counted once; one that is too large by itself is not kept.
    bodies.keep('a', counted(model), body(60));
    expect(['a', 'c'].map((key) => bodies.find(key, model)?.size)).toEqual([60, 40]);
    bodies.keep('d', counted(model), body(101));
    expect(bodies.find('d', model)).toBeUndefined();
    bodies.keep('e', counted(model), body(100));
    expect(bodies.find('e', model)?.size).toBe(100);
  });

  it('are of one model alone', () => {
    const [one, other] = [smallModel(), smallModel()];
    const bodies = createKeptBodies(100);
    bodies.keep('a', counted(one), body(10));
    expect(bodies.find('a', other)).toBeUndefined();
    expect(bodies.find('a', one)).toBeUndefined();
  });

  it('go with the cases that they were counted from, also where these changed while the answer was made', () => {
    const model = smallModel(smallCases(3));
    const bodies = createKeptBodies(100);
    const before = counted(model);
    bodies.keep('a', before, body(10));
    expect(bodies.find('a', model)?.size).toBe(10);
    retractCase(model, smallCases(3)[0]?.id ?? '');
    bodies.keep('b', before, body(10));
    expect(['a', 'b'].map((key) => bodies.find(key, model))).toEqual([undefined, undefined]);
  });
});
