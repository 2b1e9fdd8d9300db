import type { Layout } from './layout';

export const SETTINGS_VERSION = 4;

/**
 * How far each kind of observable borrows. A concentration is a number of records: what comes from further
 * away is worth at most that many records of the device's own. Large means "devices do not differ".
 */
export type ValueSettings = {
  /** Pull of the cause's own shares towards those of its group (about the cause, or not). */
  onTarget: number;
  offTarget: number;
  /** The same for causes that the observable's working value is known to clear. */
  cleared: number;
  /** Pull of one observable's group towards the same group over all observables of the kind. */
  group: number;
  /** The same for the groups of cleared causes: over many checks much alike, a misreading or a fault that comes and goes. */
  clearedGroup: number;
  /**
   * Records that one cause is worth at most in the shares that all the others lean on (`evenlyHeard`): one for symptoms and checks,
   * which lowered the log loss on demo cases by .03 nats at every cut; results of fixes hardly differ by cause.
   */
  heard: number;
  /** Records that what the kin of a cause showed is worth to it at most, by level of `Layout.kin`. */
  kin: [number, number];
  /** How far what is shown in one state of the unit differs from what is shown in all (checks only). */
  state: StateSettings;
  /** Between root and category, category and maker, maker and model, model and board. */
  levels: [number, number, number, number];
  /** Between boards that carry the very same part. */
  part: number;
};

/** In records: what is known apart from a cause's own records in the state is worth at most that many to it. */
export type StateSettings = {
  onTarget: number;
  offTarget: number;
  /** Pull of a cause off target towards all such causes in the state. */
  lean: number;
};

/** Everything that is estimated or chosen, apart from the counts. Plain and serialisable. */
export type Settings = {
  version: number;
  /** Share of the prior mixed into every posterior. */
  mixing: number;
  /** Whether a cause on no record can be the answer; off for plain tables. */
  unlisted: boolean;
  /** Records that the parent's unlisted share is worth. */
  unlistedConcentration: number;
  /** `impossible` is the factor on causes that the catalogue rules out on a device: small, as catalogues have gaps. */
  prior: { root: number; levels: [number, number, number, number]; part: number; impossible: number };
  /** By kind: symptoms, checks, fixes. */
  values: [ValueSettings, ValueSettings, ValueSettings];
  /** Per observable: factor on the kind's concentration, and the exponent w >= 0 of its likelihood. */
  concentrationFactors: number[];
  weights: number[];
  /** How much less symptoms count where several are present (`symptomFactor`); 0 is not at all. */
  symptomDamping: number;
  /** Model error of a log odds, in nats squared; see `posterior-interval.ts`. */
  modelError: ModelError;
};

/**
 * Variance of the log odds beyond what the counts leave open: a constant, a part per finding, and, once fitted, a part by
 * size of the estimate, learned out of fold (`fit-model-error.ts`).
 */
export type ModelError = {
  constant: number;
  perFinding: number;
  byEstimate?: readonly number[];
  /**
   * Records of the casebook that a chance must stand for to be told from nought, and what is left of it to be told from certainty;
   * 0 tells everything. Default 1.
   */
  leastRecords?: number;
};

/** Records that what is known of all cleared causes of a check is worth to each, where the data say little. */
export const USUAL_CLEARED = 20;

/** Settings that need no data: sensible where nothing was fitted yet. */
export function defaultSettings(layout: Layout): Settings {
  const values = (): ValueSettings => ({
    onTarget: 3,
    offTarget: 6,
    cleared: USUAL_CLEARED,
    group: 6,
    clearedGroup: 40,
    heard: 1,
    kin: [8, 8],
    state: { onTarget: 40, offTarget: 13, lean: 13 },
    levels: [100, 100, 60, 60],
    part: 60,
  });
  const observables = layout.kinds.length;
  return {
    version: SETTINGS_VERSION,
    mixing: 0.002,
    unlisted: true,
    unlistedConcentration: 20,
    prior: { root: 10, levels: [30, 30, 30, 30], part: 60, impossible: 0.02 },
    // A failed fix says much the same whatever was fixed, so its shares lean on those of all fixes together.
    values: [values(), values(), { ...values(), group: 100, offTarget: 20, heard: 10000 }],
    concentrationFactors: new Array<number>(observables).fill(1),
    weights: new Array<number>(observables).fill(0.8),
    symptomDamping: 0,
    modelError: { constant: 0.1, perFinding: 0.02 },
  };
}

/** Sixteen hexadecimal digits that name a version of the settings: 64-bit FNV-1a of their JSON. */
export function settingsHash(settings: Settings): string {
  let hash = 0xcbf29ce484222325n;
  for (const character of JSON.stringify(settings)) {
    hash = ((hash ^ BigInt(character.codePointAt(0) as number)) * 0x100000001b3n) & 0xffffffffffffffffn;
  }
  return hash.toString(16).padStart(16, '0');
}
