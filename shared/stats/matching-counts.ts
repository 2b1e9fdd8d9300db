import { forEachBit, intersect } from './bit-set';
import { flatValue } from './findings';
import type { CodedFinding } from './layout';
import { PROOF_WEIGHT_TENTHS } from './layout';
import type { RecordIndex } from './record-index';

/** A stated or implied finding of a question; implied ones do not enter matching. */
export type QueryFinding = CodedFinding & { readonly implied?: boolean };

/**
 * Whole records: all of them, those that carry every finding, those that contradict none, and among the latter two
 * those whose cause was not found. `byProof[c * 4 + proof]` splits the matching ones of a cause.
 */
export type MatchingCounts = {
  total: number;
  matching: number;
  compatible: number;
  causeNotFound: number;
  causeNotFoundCompatible: number;
  byCause: { matching: Int32Array; compatible: Int32Array; byProof: Int32Array };
};

/**
 * Counts records against findings. A record contradicts a finding where it carries another value of the same
 * observable and not this one. A record with several causes counts whole for each.
 * @param device a device node: only records below it count
 */
export function matchingCounts(index: RecordIndex, findings: readonly QueryFinding[], device?: number): MatchingCounts {
  const scope = index.all.words.slice();
  if (device !== undefined) intersect(scope, index.byDevice[device]);
  const matching = scope.slice();
  const compatible = scope.slice();
  for (const finding of findings) {
    if (finding.implied === true) continue;
    intersect(matching, index.byValue[flatValue(index.layout, finding)]);
    removeContradicting(index, compatible, finding);
  }
  const C = index.layout.causeCount;
  const proofs = PROOF_WEIGHT_TENTHS.length;
  const byCause = { matching: new Int32Array(C), compatible: new Int32Array(C), byProof: new Int32Array(C * proofs) };
  let total = 0;
  forEachBit(scope, () => {
    total += 1;
  });
  const matched = tallyCauses(index, matching, byCause.matching);
  const agreeing = tallyCauses(index, compatible, byCause.compatible);
  forEachBit(matching, (row) => {
    const record = index.rows[row];
    for (const cause of record?.causes ?? []) {
      const at = cause * proofs + (record?.proof as number);
      byCause.byProof[at] = (byCause.byProof[at] as number) + 1;
    }
  });
  return {
    total,
    matching: matched.records,
    compatible: agreeing.records,
    causeNotFound: matched.causeNotFound,
    causeNotFoundCompatible: agreeing.causeNotFound,
    byCause,
  };
}

function removeContradicting(index: RecordIndex, rows: Uint32Array, finding: CodedFinding): void {
  const { valueStarts, valueCounts } = index.layout;
  const start = valueStarts[finding.observable] as number;
  const same = index.byValue[start + finding.value];
  for (let v = 0; v < (valueCounts[finding.observable] as number); v += 1) {
    const other = index.byValue[start + v];
    if (v === finding.value || other === undefined) continue;
    for (let w = 0; w < rows.length; w += 1) {
      rows[w] = (rows[w] as number) & (~(other.words[w] ?? 0) | (same?.words[w] ?? 0));
    }
  }
}

function tallyCauses(index: RecordIndex, rows: Uint32Array, into: Int32Array): { records: number; causeNotFound: number } {
  const result = { records: 0, causeNotFound: 0 };
  forEachBit(rows, (row) => {
    const causes = index.rows[row]?.causes ?? [];
    result.records += 1;
    if (causes.length === 0) result.causeNotFound += 1;
    for (const cause of causes) into[cause] = (into[cause] as number) + 1;
  });
  return result;
}
