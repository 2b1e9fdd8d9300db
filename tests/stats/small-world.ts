import { CHECK, type CodedRecord, FIX, type Layout, type RecordedFinding, SYMPTOM } from '../../shared/stats/layout';

/**
 * A layout small enough to reason about: 4 causes; symptoms 0-2, checks 3-4 (3 about cause 0; 4 about cause 1), fix 5
 * (addresses cause 0). Devices: 0 root; 1, 6 categories; 2, 7 makers; 3, 8 models; boards 4, 5 (of model 3) and 9 (of
 * model 8). Symptom 2 shows state 2, symptom 1 state 1; causes 0 and 1 are kin. Boards 4 and 9 carry the same part for cause 0
 * (class 0); board 5 another (class 1).
 */
export function smallLayout(): Layout {
  const C = 4;
  const valueCounts = Uint16Array.of(2, 2, 2, 3, 2, 5);
  const onTarget = new Uint8Array(6 * C);
  onTarget[3 * C + 0] = 1;
  onTarget[4 * C + 1] = 1;
  onTarget[5 * C + 0] = 1;
  const partClasses = new Int32Array(10 * C).fill(-1);
  partClasses[4 * C] = 0;
  partClasses[9 * C] = 0;
  partClasses[5 * C] = 1;
  return {
    causeCount: C,
    kinds: Uint8Array.of(SYMPTOM, SYMPTOM, SYMPTOM, CHECK, CHECK, FIX),
    valueCounts,
    valueStarts: Uint32Array.of(0, 2, 4, 6, 9, 11, 16),
    onTarget,
    deviceParents: Int32Array.of(-1, 0, 1, 2, 3, 3, 0, 6, 7, 8),
    deviceDepths: Uint8Array.of(0, 1, 2, 3, 4, 4, 1, 2, 3, 4),
    partClasses,
    partClassCount: 2,
    workingValues: Int16Array.of(-1, -1, -1, 0, 0, -1),
    kin: [Int32Array.of(0, 0, 1, -1), Int32Array.of(0, 1, 2, -1)],
    showsState: Uint8Array.of(0, 1, 2, 0, 0, 0),
  };
}

export const BOARDS = [4, 5, 9] as const;

/** A finding on record: a symptom at the start, or a step. */
export function recorded(observable: number, value: number, more: Partial<RecordedFinding> = {}): RecordedFinding {
  return { observable, value, implied: false, step: observable < 3 ? 0 : observable, stage: 0, proves: false, ...more };
}

export function recordOf(device: number, causes: number[], findings: RecordedFinding[], proof = 0): CodedRecord {
  return { device, causes, proof: causes.length === 0 ? -1 : proof, findings };
}
