import { type CodedFinding, FIX, type Layout } from '../../stats/layout';
import { addToIndex, createRecordIndex, liveRows, type RecordIndex, readRow, statedValues } from '../../stats/record-index';
import { compareKeys } from '../../stats/record-keys';
import type { FixAttempt } from '../casebook/case-entry';
import type { CasebookModel } from '../casebook/casebook-model';
import type { Steps } from '../steps/steps';

/**
 * The accepted records without ids, months, texts or readings, as one list of whole numbers; per record: device,
 * proof + 1, number of causes, causes, number of flat values, values as steps from the one before, number of
 * attempts, and per attempt its result, number of fixes, fixes.
 */
export type PackedRecords = readonly number[];

/** Rows of an index in the order of the records' keys: the order of a pack. */
export function packedRows(index: RecordIndex): number[] {
  return [...liveRows(index)].sort((a, b) => compareKeys(index.keys, a, b));
}

/** Records packed in one step. */
const ROWS_A_STEP = 64;

/** Packs the records of an index, which must stay as it is until the last step. */
export function* packRecords(model: Pick<CasebookModel, 'index' | 'entries'>): Steps<PackedRecords> {
  const packed: number[] = [];
  for (const [position, row] of packedRows(model.index).entries()) {
    if (position % ROWS_A_STEP === 0) yield;
    const record = readRow(model.index, row);
    const values = statedValues(record);
    packed.push(record.device, record.proof + 1, record.causes.length, ...record.causes, values.length);
    let before = 0;
    for (const value of values) {
      packed.push(value - before);
      before = value;
    }
    const attempts = model.entries.get(row)?.attempts ?? [];
    packed.push(attempts.length);
    for (const { result, fixes } of attempts) packed.push(result, fixes.length, ...fixes);
  }
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

/**
 * The index of unpacked records: row n holds record n. `designators` are numbers per cause of a record, where there are any.
 */
export function indexOf(
  layout: Layout,
  records: readonly UnpackedRecord[],
  designators: ReadonlyMap<number, readonly (readonly number[])[]> = new Map(),
): RecordIndex {
  const index = createRecordIndex(layout);
  records.forEach(({ device, proof, causes, findings, attempts }, row) => {
    const tried = attempts.flatMap(({ result, fixes }, i) => fixes.map((observable) => ({ observable, value: result, step: i + 1 })));
    const isStated = (f: CodedFinding) => findings.some((g) => g.observable === f.observable && g.value === f.value);
    const seen = findings.filter((f) => layout.kinds[f.observable] !== FIX).map((f) => ({ ...f, step: 0 }));
    const stated = [...seen, ...tried.filter(isStated)].map((f) => ({ ...f, ...STATED }));
    const late = tried.filter((f) => !isStated(f));
    addToIndex(index, { device, proof, causes, findings: stated }, { late, designators: designators.get(row) });
  });
  return index;
}

const STATED = { implied: false, stage: 0, proves: false };

function observablesByValue(layout: Layout): Uint16Array {
  const observables = new Uint16Array(layout.valueStarts[layout.valueCounts.length] as number);
  layout.valueCounts.forEach((count, o) => observables.fill(o, layout.valueStarts[o], (layout.valueStarts[o] as number) + count));
  return observables;
}
