import { describe, expect, it } from 'vitest';
import { deviceNearness, nearnessOfAll, sharesPart } from '../../shared/stats/device-nearness';
import { findingAgreement } from '../../shared/stats/finding-agreement';
import { rankSimilar } from '../../shared/stats/rank-similar';
import { addToIndex, createRecordIndex } from '../../shared/stats/record-index';
import { recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();

describe('findingAgreement', () => {
  // Two equally likely causes, one observable: the first shows value 1 in 9 of 10 units, the second in 1 of 10.
  const prior = Float64Array.from([0.5, 0.5]);
  const telling = { table: Float64Array.from([0.1, 0.9, 0.9, 0.1]) };

  it('is the log of how much likelier two units of one cause agree so than any two units', () => {
    const [against = 0, alike = 0] = findingAgreement(prior, telling, 1);
    // P(1,1 | same cause) = (.81 + .01) / 2 = .41 against .5 x .5; P(1,0 | same cause) = .09 against .25.
    expect(alike).toBeCloseTo(Math.log(0.41 / 0.25), 12);
    expect(against).toBeCloseTo(Math.log(0.09 / 0.25), 12);
  });

  it('says nothing where the observable does not depend on the cause', () => {
    const dull = findingAgreement(prior, { table: Float64Array.from([0.3, 0.7, 0.3, 0.7]) }, 1);
    for (const gain of dull) expect(gain).toBeCloseTo(0, 12);
  });
});

describe('rankSimilar', () => {
  const index = createRecordIndex(layout);
  const both = addToIndex(index, recordOf(4, [0], [recorded(0, 1), recorded(1, 1)]));
  const one = addToIndex(index, recordOf(5, [0], [recorded(0, 1)]));
  const against = addToIndex(index, recordOf(9, [1], [recorded(0, 1), recorded(1, 0)]));
  const nothing = addToIndex(index, recordOf(9, [1], [recorded(2, 1)]));
  const findings = [{ observable: 0, value: 1 }, { observable: 1, value: 1 }];
  const gains = ({ value }: { value: number }) => Float64Array.from([0, 1], (_, there) => (there === value ? 1 : -0.5));
  const options = { limit: 10, gains, term: { of: () => 0, most: 0 } };

  it('puts what shares most first and what contradicts last, and leaves out what shares nothing', () => {
    const ranked = rankSimilar(index, { device: null, findings }, options);
    expect(ranked.map(({ row, score }) => [row, score])).toEqual([[both, 2], [one, 1], [against, 0.5]]);
    expect(ranked[0]?.shared).toEqual(findings);
    expect(ranked[2]?.contradicting).toEqual([{ observable: 1, value: 1, there: 0 }]);
  });

  it('adds what a record brings by itself, but ranks none for that alone', () => {
    const ranked = rankSimilar(index, { device: null, findings }, { ...options, term: { of: (row) => (row === against || row === nothing ? 9 : 0), most: 9 } });
    expect(ranked.map(({ row }) => row)).toEqual([against, both, one]);
  });

  it('lets what is implied speak for and against, but not bring a record in', () => {
    const implied = [{ observable: 0, value: 1 }, { observable: 2, value: 1, implied: true }];
    expect(rankSimilar(index, { device: null, findings: implied }, options).map(({ row }) => row)).not.toContain(nothing);
  });

  it('keeps to the limit', () => {
    expect(rankSimilar(index, { device: null, findings }, { ...options, limit: 1 }).map(({ row }) => row)).toEqual([both]);
  });
});

describe('deviceNearness and sharesPart', () => {
  it('knows the board, its model, its category, and nothing of an unknown device', () => {
    const boards = [...layout.deviceDepths.keys()].filter((node) => layout.deviceDepths[node] === 4);
    const [first = 0] = boards;
    const model = layout.deviceParents[first] as number;
    const sibling = boards.find((node) => node !== first && layout.deviceParents[node] === model);
    expect(deviceNearness(layout, first, first)).toBe('same-board');
    expect(deviceNearness(layout, first, model)).toBe('same-model');
    if (sibling !== undefined) expect(deviceNearness(layout, first, sibling)).toBe('same-model');
    expect(deviceNearness(layout, 0, first)).toBe('other');
    for (let asked = 0; asked < layout.deviceParents.length; asked += 1) {
      expect(nearnessOfAll(layout, asked)).toEqual(Array.from(layout.deviceParents, (_, there) => deviceNearness(layout, asked, there)));
    }
    expect(sharesPart(layout, { asked: 0, there: first, cause: 0 })).toBe(false);
  });
});
