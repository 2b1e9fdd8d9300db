import { type CodedRecord, type Layout, SYMPTOM } from './layout';

/** A plain table in numbers: every column but one an observable, that one the cause. */
export type CodedTable = { layout: Layout; records: CodedRecord[]; columns: string[]; causes: string[] };

/**
 * Codes a table of texts. An empty cell is missing. There is one device; values and causes are numbered in
 * the order in which they appear.
 * @throws RangeError where the table is empty, the column is not there or a row has no cause
 */
export function encodeTable(rows: readonly Readonly<Record<string, string>>[], causeColumn: string): CodedTable {
  const first = rows[0];
  if (first === undefined) throw new RangeError('The table has no rows.');
  if (!(causeColumn in first)) throw new RangeError(`The table has no column "${causeColumn}".`);
  const columns = Object.keys(first).filter((name) => name !== causeColumn);
  const causes = new Map<string, number>();
  const values = columns.map(() => new Map<string, number>());
  const records = rows.map((row, i): CodedRecord => {
    const cause = row[causeColumn] ?? '';
    if (cause === '') throw new RangeError(`Row ${i + 1} has no ${causeColumn}.`);
    const findings = columns.flatMap((name, observable) => {
      const cell = row[name] ?? '';
      if (cell === '') return [];
      const value = numberOf(values[observable] as Map<string, number>, cell);
      return [{ observable, value, implied: false, step: 0, stage: 0, proves: false }];
    });
    return { device: 0, causes: [numberOf(causes, cause)], proof: 0, findings };
  });
  const valueCounts = Uint16Array.from(values, (known) => Math.max(1, known.size));
  return { layout: flatLayout(causes.size, valueCounts), records, columns, causes: [...causes.keys()] };
}

/** A layout of one device and symptoms only, about which nothing is known but how many values they have. */
export function flatLayout(causeCount: number, valueCounts: Uint16Array): Layout {
  const valueStarts = new Uint32Array(valueCounts.length + 1);
  valueCounts.forEach((count, o) => {
    valueStarts[o + 1] = (valueStarts[o] as number) + count;
  });
  return {
    causeCount,
    kinds: new Uint8Array(valueCounts.length).fill(SYMPTOM),
    valueCounts,
    valueStarts,
    onTarget: new Uint8Array(valueCounts.length * causeCount),
    deviceParents: Int32Array.of(-1),
    deviceDepths: Uint8Array.of(0),
    partClasses: new Int32Array(causeCount).fill(-1),
    partClassCount: 0,
  };
}

function numberOf(known: Map<string, number>, name: string): number {
  const number = known.get(name) ?? known.size;
  known.set(name, number);
  return number;
}
