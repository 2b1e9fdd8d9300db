/**
 * The integer coding that every statistic works on. Names, slugs and rules stay outside: an encoder in
 * `shared/domain` turns vocabulary and catalogue into a layout, and cases into coded records.
 */

/** What an observable is. A fix's values are its results; a symptom's are 0 absent, 1 present. */
export const SYMPTOM = 0;
export const CHECK = 1;
export const FIX = 2;
export type ObservableKind = typeof SYMPTOM | typeof CHECK | typeof FIX;

export type Layout = {
  /** Number of listed causes. Index `causeCount` in any per-cause array is the unlisted cause. */
  readonly causeCount: number;
  readonly kinds: Uint8Array;
  /** Number of values of each observable. */
  readonly valueCounts: Uint16Array;
  /** First flat value index of each observable; one longer than `valueCounts`, last entry is the total. */
  readonly valueStarts: Uint32Array;
  /**
   * `onTarget[observable * causeCount + cause]` is 1 where the observable is about that cause: a check
   * of the cause's role or one that clears it, a fix that addresses it. All 0 where nothing is known (a plain table).
   */
  readonly onTarget: Uint8Array;
  /** Device tree, parents before children; -1 for the root. Node 0 is the root ("any device"). */
  readonly deviceParents: Int32Array;
  /** 0 root, 1 category, 2 maker, 3 model, 4 board revision. */
  readonly deviceDepths: Uint8Array;
  /**
   * `partClasses[device * causeCount + cause]`: id of the very part (role and part number) that the cause
   * is about on that board, shared by all boards that carry it; -1 where unknown or not a board.
   */
  readonly partClasses: Int32Array;
  readonly partClassCount: number;
  /** Per observable: the value that a working unit shows (checks); -1 or left out where not known. */
  readonly workingValues?: Int16Array;
  /** Per observable: 1 where the working value is known to clear the causes that it is about, bar intermittent faults. */
  readonly clearing?: Uint8Array;
  /**
   * Coarse to fine: the group of each cause, -1 for none, group numbers below `causeCount`. Causes of one group are expected to
   * show alike in what is not about them: first those of one area of the unit, then those of one part role.
   */
  readonly kin?: readonly Int32Array[];
  /**
   * Per observable: the state of the unit that a symptom shows when present, 0 for none; a higher state hides more. What checks
   * show depends on the cause and on the state.
   */
  readonly showsState?: Uint8Array;
  /** `impossible[device * causeCount + cause]` is 1 where the catalogue rules the cause out there (no such part). */
  readonly impossible?: Uint8Array;
};

export type CodedFinding = { readonly observable: number; readonly value: number };

/** Proof weights in tenths, in the order of the schema's proofs. */
export const PROOF_WEIGHT_TENTHS = [10, 10, 8, 3] as const;

export type RecordedFinding = CodedFinding & {
  /** Absent without being stated: it follows from what was, or from the list being complete. Never enters matching. */
  readonly implied: boolean;
  /** 0 seen at the start (symptoms); else 1 + the position of the step it came from. */
  readonly step: number;
  /** Stage 0-4 of the check or fix; 0 for symptoms. */
  readonly stage: number;
  /** The check that proved the cause, or a fix that cured: never predicts this record's own cause. */
  readonly proves: boolean;
};

/** One accepted record, coded. `causes` empty: cause not found. Several causes count fractionally. */
export type CodedRecord = {
  readonly device: number;
  readonly causes: readonly number[];
  /** Index into the schema's proofs; -1 where the cause was not found. */
  readonly proof: number;
  readonly findings: readonly RecordedFinding[];
};
