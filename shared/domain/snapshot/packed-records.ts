import type { CodedFinding, Layout } from '../../stats/layout';
import { addToIndex, createRecordIndex, type RecordIndex } from '../../stats/record-index';
import type { CaseEntry, FixAttempt } from '../casebook/case-entry';

/**
 * The accepted records without ids, months, texts or readings, as one list of whole numbers; per record: device,
 * proof + 1, number of causes, causes, number of flat values, values as steps from the one before, number of
 * attempts, and per attempt its result, number of fixes, fixes.
 */
export type PackedRecords = readonly number[];

/** Packs the records of an index in the order of their rows. */
export function packRecords(index: RecordIndex, entries: ReadonlyMap<number, CaseEntry>): PackedRecords {
  const packed: number[] = [];
  index.rows.forEach((row, at) => {
    if (row === undefined) return;
    packed.push(row.device, row.proof + 1, row.causes.length, ...row.causes, row.values.length);
    let before = 0;
    for (const value of row.values) {
      packed.push(value - before);
      before = value;
    }
    const attempts = entries.get(at)?.attempts ?? [];
    packed.push(attempts.length);
    for (const { result, fixes } of attempts) packed.push(result, fixes.length, ...fixes);
  });
  return packed;
}

export type UnpackedRecord = { device: number; proof: number; causes: number[]; findings: CodedFinding[]; attempts: FixAttempt[] };

/** The records of a pack, in order. Throws RangeError where it ends in the middle of one. */
export function unpackRecords(layout: Layout, packed: PackedRecords): UnpackedRecord[] {
  const observableOf = observablesByValue(layout);
  const records: UnpackedRecord[] = [];
  let at = 0;
  const next = (): number => {
    const value = packed[at];
    if (value === undefined) throw new RangeError('The packed records end in the middle of one.');
    at += 1;
    return value;
  };
  const list = <T>(read: () => T): T[] => Array.from({ length: next() }, read);
  while (at < packed.length) {
    const device = next();
    const proof = next() - 1;
    const causes = list(next);
    let flat = 0;
    const findings = list(() => {
      flat += next();
      const observable = observableOf[flat] as number;
      return { observable, value: flat - (layout.valueStarts[observable] as number) };
    });
    const attempts = list(() => {
      const result = next();
      return { result, fixes: list(next) };
    });
    records.push({ device, proof, causes, findings, attempts });
  }
  return records;
}

/** The index of unpacked records: row n holds record n. */
export function indexOf(layout: Layout, records: readonly UnpackedRecord[]): RecordIndex {
  const index = createRecordIndex(layout);
  for (const { device, proof, causes, findings } of records) {
    addToIndex(index, { device, proof, causes, findings: findings.map((f) => ({ ...f, ...STATED })) });
  }
  return index;
}

const STATED = { implied: false, step: 0, stage: 0, proves: false };

function observablesByValue(layout: Layout): Uint16Array {
  const observables = new Uint16Array(layout.valueStarts[layout.valueCounts.length] as number);
  layout.valueCounts.forEach((count, o) => observables.fill(o, layout.valueStarts[o], (layout.valueStarts[o] as number) + count));
  return observables;
}
