import { addBits, type BitWords, clearBit, hasBit, setBit } from './bit-set';
import { devicePath, distinctFindings, flatValue } from './findings';
import { type CodedFinding, type Layout, PROOF_WEIGHT_TENTHS } from './layout';
import { oddRows } from './odd-rows';
import { denseBits, intersectLists, type PostingList } from './posting-list';
import { isLive, NO_CAUSE, type RecordIndex } from './record-index';
import { forEachFurtherCause, SEVERAL_CAUSES, states } from './record-words';
import { bitRoom } from './scratch';

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
  const below = device === 0 ? null : nodesBelow(index.layout, device);
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
  return stated.length === 0 ? allBelow(index, device) : tallyMatching(index, stated, device === 0 ? null : nodesBelow(index.layout, device));
}

/** Records below a device node, and those of them that carry every finding. */
export function countOnDevice(index: RecordIndex, findings: readonly QueryFinding[], device: number): { total: number; matching: number } {
  return { total: index.total[device] as number, matching: countMatching(index, findings, device).records };
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

function tallyMatching(index: RecordIndex, findings: readonly CodedFinding[], below: Uint8Array | null): CauseTally {
  const lists = findings.map((finding) => index.byValue[flatValue(index.layout, finding)]).filter((list) => list !== undefined);
  const count = intersectLists(lists, index);
  const { rows } = index.scratch;
  const tally = createTally(index.layout);
  for (let i = 0; i < count; i += 1) {
    const row = rows[i] as number;
    if (isCounted(index, row, below)) tallyRow(index, row, tally);
  }
  return tally;
}

/** Rows that carry another value of an observable asked about and not the one asked for, each once, by their causes. */
function tallyContradicting(index: RecordIndex, findings: readonly CodedFinding[], below: Uint8Array | null): Omit<CauseTally, 'byProof'> {
  const bits = bitRoom(index.scratch, index.rows);
  for (const finding of findings) markOtherValues(index, finding, bits);
  const odd = oddRows(index);
  for (const row of odd.doubled) {
    // Such a row may carry the value asked for as well.
    if (hasBit(bits, row) && !findings.some((finding) => contradicts(index, row, finding))) clearBit(bits, row);
  }
  const { causeCount } = index.layout;
  const first = new Int32Array(causeCount + 1);
  for (const row of odd.several) {
    if (hasBit(bits, row) && isCounted(index, row, below)) forEachFurtherCause(index, row, (cause) => bump(first, cause));
  }
  const records = takeFirstCauses(index, { bits, below, first });
  return { records, causeNotFound: first[causeCount] as number, byCause: first.subarray(0, causeCount) };
}

/** Counts the rows of the bits by their first cause, those without one last, and leaves all bits 0; returns how many there are. */
function takeFirstCauses(index: RecordIndex, { bits, below, first }: { bits: BitWords; below: Uint8Array | null; first: Int32Array }): number {
  const { live, firstCause, device } = index;
  const { causeCount } = index.layout;
  const words = (index.rows + 31) >>> 5;
  let records = 0;
  for (let w = 0; w < words; w += 1) {
    let word = (bits[w] as number) & (live[w] as number);
    bits[w] = 0;
    while (word !== 0) {
      const row = w * 32 + (31 - Math.clz32(word & -word));
      word &= word - 1;
      if (below !== null && below[device[row] as number] === 0) continue;
      records += 1;
      bump(first, Math.min(causeCount, firstCause[row] as number));
    }
  }
  return records;
}

/** Sets the bits of the rows, taken out ones too, that carry another value of the finding's observable. */
function markOtherValues({ layout, byValue, rows: all }: RecordIndex, finding: CodedFinding, bits: BitWords): void {
  const own = flatValue(layout, finding);
  const start = layout.valueStarts[finding.observable] as number;
  const end = layout.valueStarts[finding.observable + 1] as number;
  for (let flat = start; flat < end; flat += 1) {
    if (flat === own) continue;
    const list = byValue[flat] as PostingList;
    const dense = denseBits(list, all);
    if (dense !== null) addBits(bits, dense);
    else setBits(bits, list);
  }
}

function setBits(bits: BitWords, { rows, length }: PostingList): void {
  for (let i = 0; i < length; i += 1) setBit(bits, rows[i] as number);
}

function contradicts(index: RecordIndex, row: number, finding: CodedFinding): boolean {
  const start = index.layout.valueStarts[finding.observable] as number;
  const end = index.layout.valueStarts[finding.observable + 1] as number;
  let differs = false;
  for (let flat = start; flat < end; flat += 1) {
    if (!states(index, row, flat)) continue;
    if (flat === start + finding.value) return false;
    differs = true;
  }
  return differs;
}

function isCounted(index: RecordIndex, row: number, below: Uint8Array | null): boolean {
  return isLive(index, row) && (below === null || below[index.device[row] as number] === 1);
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
  bump(byCause, cause);
  bump(byProof, cause * PROOFS + proof);
}

function bump(cells: Int32Array, at: number): void {
  cells[at] = (cells[at] as number) + 1;
}
