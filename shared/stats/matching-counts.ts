import { devicePath, distinctFindings, flatValue } from './findings';
import { type CodedFinding, type Layout, PROOF_WEIGHT_TENTHS } from './layout';
import { intersectLists } from './posting-list';
import { isLive, NO_CAUSE, type RecordIndex, scratchOf } from './record-index';
import { DOUBLED, forEachFurtherCause, SEVERAL_CAUSES, states } from './record-words';

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

const PROOFS = PROOF_WEIGHT_TENTHS.length;

/**
 * Counts records against findings. A record contradicts a finding where it carries another value of the same
 * observable and not this one. A record with several causes counts whole for each. Matching rows are met in the lists of
 * the findings; compatible ones are all less those met in the lists of other values.
 * @param device a device node: only records below it count
 */
export function matchingCounts(index: RecordIndex, findings: readonly QueryFinding[], device = 0): MatchingCounts {
  const stated = distinctFindings(index.layout, findings.filter((f) => f.implied !== true));
  const below = nodesBelow(index.layout, device);
  const everything = allBelow(index, device);
  const matching = stated.length === 0 ? everything : tallyMatching(index, stated, below);
  const against = tallyContradicting(index, stated, below);
  const total = index.total[device] as number;
  return {
    total,
    matching: matching.records,
    compatible: total - against.records,
    causeNotFound: matching.causeNotFound,
    causeNotFoundCompatible: everything.causeNotFound - against.causeNotFound,
    byCause: {
      matching: matching.byCause,
      compatible: everything.byCause.map((n, c) => n - (against.byCause[c] as number)),
      byProof: matching.byProof,
    },
  };
}

/** Records by their causes, those without a cause, and `byProof[c * 4 + proof]`. */
export type CauseTally = { records: number; causeNotFound: number; byCause: Int32Array; byProof: Int32Array };

/** Only the records below a device node (any unless given) that carry every finding; quicker than all of `matchingCounts`. */
export function countMatching(index: RecordIndex, findings: readonly QueryFinding[], device = 0): CauseTally {
  const stated = distinctFindings(index.layout, findings.filter((f) => f.implied !== true));
  return stated.length === 0 ? allBelow(index, device) : tallyMatching(index, stated, nodesBelow(index.layout, device));
}

function createTally({ causeCount }: Layout): CauseTally {
  return { records: 0, causeNotFound: 0, byCause: new Int32Array(causeCount), byProof: new Int32Array(causeCount * PROOFS) };
}

/** 1 for each device node that is the given one or stands below it. */
export function nodesBelow({ deviceParents }: Layout, device: number): Uint8Array {
  const below = new Uint8Array(deviceParents.length);
  below[device] = 1;
  // Parents stand before their children.
  for (let node = device + 1; node < below.length; node += 1) below[node] = below[deviceParents[node] as number] ?? 0;
  return below;
}

function allBelow(index: RecordIndex, device: number): CauseTally {
  devicePath(index.layout, device);
  const C = index.layout.causeCount;
  const byProof = index.proofs.slice(device * C * PROOFS, (device + 1) * C * PROOFS);
  const byCause = new Int32Array(C);
  byProof.forEach((n, i) => {
    const cause = Math.floor(i / PROOFS);
    byCause[cause] = (byCause[cause] as number) + n;
  });
  return { records: index.total[device] as number, causeNotFound: index.unresolved[device] as number, byCause, byProof };
}

function tallyMatching(index: RecordIndex, findings: readonly CodedFinding[], below: Uint8Array): CauseTally {
  const { rows } = scratchOf(index);
  const lists = findings.map((finding) => index.byValue[flatValue(index.layout, finding)]).filter((list) => list !== undefined);
  const count = intersectLists(lists, rows);
  const tally = createTally(index.layout);
  for (let i = 0; i < count; i += 1) {
    const row = rows[i] as number;
    if (isLive(index, row) && below[index.device[row] as number] === 1) tallyRow(index, row, tally);
  }
  return tally;
}

/** Rows that carry another value of an observable asked about and not the one asked for; each once. */
function tallyContradicting(index: RecordIndex, findings: readonly CodedFinding[], below: Uint8Array): CauseTally {
  const { rows, mark } = scratchOf(index);
  const tally = createTally(index.layout);
  let met = 0;
  for (const finding of findings) {
    const own = flatValue(index.layout, finding);
    const start = index.layout.valueStarts[finding.observable] as number;
    const end = index.layout.valueStarts[finding.observable + 1] as number;
    for (let flat = start; flat < end; flat += 1) {
      const list = index.byValue[flat];
      if (flat === own || list === undefined) continue;
      for (let i = 0; i < list.length; i += 1) {
        const row = list.rows[i] as number;
        if (mark[row] === 1 || !isLive(index, row) || below[index.device[row] as number] === 0) continue;
        if (((index.labels[row] as number) & DOUBLED) !== 0 && states(index, row, own)) continue;
        mark[row] = 1;
        rows[met] = row;
        met += 1;
        tallyRow(index, row, tally);
      }
    }
  }
  for (let i = 0; i < met; i += 1) mark[rows[i] as number] = 0;
  return tally;
}

function tallyRow(index: RecordIndex, row: number, tally: CauseTally): void {
  tally.records += 1;
  const first = index.firstCause[row] as number;
  if (first === NO_CAUSE) {
    tally.causeNotFound += 1;
    return;
  }
  const labels = index.labels[row] as number;
  const proof = (labels & 7) - 1;
  count(tally, first, proof);
  if ((labels & SEVERAL_CAUSES) !== 0) forEachFurtherCause(index, row, (cause) => count(tally, cause, proof));
}

function count({ byCause, byProof }: CauseTally, cause: number, proof: number): void {
  byCause[cause] = (byCause[cause] as number) + 1;
  byProof[cause * PROOFS + proof] = (byProof[cause * PROOFS + proof] as number) + 1;
}
