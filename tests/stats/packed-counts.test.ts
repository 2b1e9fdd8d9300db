import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addRecord, createCounts } from '../../shared/stats/counts';
import { serialiseCounts } from '../../shared/stats/counts-serialised';
import { packCounts, unpackCounts } from '../../shared/stats/packed-counts';
import { arbitraryRecord } from './arbitrary-record';
import { smallLayout as layoutOfSmallWorld } from './small-world';

const smallLayout = layoutOfSmallWorld();

describe('packed counts', () => {
  it('come back bit for bit, also where a record has several causes', () => {
    fc.assert(
      fc.property(fc.array(arbitraryRecord, { maxLength: 25 }), (records) => {
        const counts = createCounts(smallLayout);
        for (const record of records) addRecord(counts, record);
        const back = unpackCounts(smallLayout, JSON.parse(JSON.stringify(packCounts(counts))));
        expect(serialiseCounts(back)).toEqual(serialiseCounts(counts));
      }),
      { seed: 11 },
    );
  });

  it('of another version or another layout are refused', () => {
    const packed = packCounts(createCounts(smallLayout));
    expect(() => unpackCounts(smallLayout, { ...packed, version: 7 })).toThrow(/version 7/);
    expect(() => unpackCounts({ ...smallLayout, causeCount: 2 }, packed)).toThrow(/another vocabulary/);
  });
});
