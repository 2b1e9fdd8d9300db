import fc from 'fast-check';
import type { CodedRecord } from '../../shared/stats/layout';
import { BOARDS, recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();

/** Any record of the small world, unresolved ones and ones with several causes included. */
export const arbitraryRecord: fc.Arbitrary<CodedRecord> = fc
  .record({
    device: fc.constantFrom(...BOARDS, 3, 8),
    causes: fc.uniqueArray(fc.integer({ min: 0, max: 3 }), { maxLength: 3 }),
    proof: fc.integer({ min: 0, max: 3 }),
    findings: fc.array(
      fc.integer({ min: 0, max: 5 }).chain((o) => fc.integer({ min: 0, max: (layout.valueCounts[o] as number) - 1 }).map((v) => recorded(o, v))),
      { maxLength: 8 },
    ),
  })
  .map(({ device, causes, proof, findings }) => recordOf(device, causes, findings, proof));
