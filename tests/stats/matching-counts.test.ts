import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CodedRecord } from '../../shared/stats/layout';
import { countMatching, matchingCounts, type QueryFinding } from '../../shared/stats/matching-counts';
import { addToIndex, createRecordIndex, retractFromIndex } from '../../shared/stats/record-index';
import { arbitraryRecord } from './arbitrary-record';
import { recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const query = fc.array(fc.constantFrom<QueryFinding>(...[0, 1, 2].flatMap((o) => [0, 1].map((value) => ({ observable: o, value }))), { observable: 3, value: 2 }), { maxLength: 3 });

/** The definitions, one record at a time. */
function naive(records: readonly CodedRecord[], findings: readonly QueryFinding[]) {
  const stated = (r: CodedRecord) => r.findings.filter((f) => !f.implied);
  const has = (r: CodedRecord, f: QueryFinding) => stated(r).some((g) => g.observable === f.observable && g.value === f.value);
  const contradicts = (r: CodedRecord, f: QueryFinding) => stated(r).some((g) => g.observable === f.observable) && !has(r, f);
  const matching = records.filter((r) => findings.every((f) => has(r, f)));
  const compatible = records.filter((r) => !findings.some((f) => contradicts(r, f)));
  const byCause = (of: readonly CodedRecord[]) => [0, 1, 2, 3].map((c) => of.filter((r) => r.causes.includes(c)).length);
  return {
    total: records.length,
    matching: matching.length,
    compatible: compatible.length,
    causeNotFound: matching.filter((r) => r.causes.length === 0).length,
    matchingByCause: byCause(matching),
    compatibleByCause: byCause(compatible),
  };
}

describe('matchingCounts', () => {
  it('equals the definitions on any records, after retractions too', () => {
    fc.assert(
      fc.property(fc.array(arbitraryRecord, { maxLength: 70 }), query, fc.nat(), (records, findings, drop) => {
        const index = createRecordIndex(layout);
        const rows = records.map((record) => addToIndex(index, record));
        const kept = [...records];
        if (records.length > 0) {
          const at = drop % records.length;
          retractFromIndex(index, rows[at] as number);
          kept.splice(at, 1);
        }
        const counted = matchingCounts(index, findings);
        expect({
          total: counted.total,
          matching: counted.matching,
          compatible: counted.compatible,
          causeNotFound: counted.causeNotFound,
          matchingByCause: [...counted.byCause.matching],
          compatibleByCause: [...counted.byCause.compatible],
        }).toEqual(naive(kept, findings));
        expect([...countMatching(index, findings).byCause]).toEqual([...counted.byCause.matching]);
        const below = matchingCounts(index, findings, 3);
        expect(below.total).toBe(kept.filter((r) => [3, 4, 5].includes(r.device)).length);
      }),
      { numRuns: 200 },
    );
  });

  it('leaves implied absences out of matching, on records and in questions', () => {
    const index = createRecordIndex(layout);
    addToIndex(index, recordOf(4, [0], [recorded(0, 1), recorded(1, 0, { implied: true })]));
    expect(matchingCounts(index, [{ observable: 1, value: 0 }]).matching).toBe(0);
    expect(matchingCounts(index, [{ observable: 1, value: 1 }]).compatible).toBe(1);
    expect(matchingCounts(index, [{ observable: 0, value: 1 }, { observable: 2, value: 0, implied: true }]).matching).toBe(1);
  });

  it('splits the matching ones by how the cause was proved', () => {
    const index = createRecordIndex(layout);
    for (const proof of [0, 1, 1, 3]) addToIndex(index, recordOf(4, [2], [recorded(0, 1)], proof));
    expect([...matchingCounts(index, [{ observable: 0, value: 1 }]).byCause.byProof.slice(8, 12)]).toEqual([1, 2, 0, 1]);
  });
});
