import { COUNT_UNIT, type Counts } from './counts';
import { createGroupShares, type GroupShares } from './group-shares';
import { CHECK, type Layout } from './layout';
import { type LogMoments, logShareMoments } from './log-share-moments';
import type { Settings, ValueSettings } from './settings';
import { shareInState, stateCountOf } from './state-shares';
import { PART_PLACE, stepCounts, type ValueStep, valueSteps } from './value-steps';

/**
 * P(v | cause, device) of some values of one observable: `share[c * values + i]`, c up to and with the unlisted cause;
 * and how many records each cause's row is worth.
 */
export type ValueShares = { share: Float64Array; worth: Float64Array };

/** The same of one value or all, and when asked for the logarithms of the shares and what is not known about them. Kept: read, never change. */
export type KnownShares = ValueShares & { logs: () => Float64Array; moments: () => LogMoments };

/** Devices whose shares are kept: two to four megabytes each where causes and checks are hundreds. */
const DEVICES_KEPT = 16;

/** A check all but ignored is not sharpened beyond this. */
const LEAST_CLEARING_WEIGHT = 0.5;

type Input = {
  settings: Settings;
  stepsOf: (cause: number) => readonly ValueStep[];
  shares: GroupShares;
  observable: number;
  values: readonly number[];
};

/** Shares as they stand in one state of the unit, for checks; in an unknown state, and for other observables, as they are. */
function inState(counts: Counts, input: Input & { plain: ValueShares; state: number }): ValueShares {
  const { layout } = counts;
  const { plain, state, observable, values, shares, settings } = input;
  if (state < 0 || layout.kinds[observable] !== CHECK) return plain;
  const C = layout.causeCount;
  const V = values.length;
  const kind = settings.values[CHECK];
  const share = Float64Array.from(plain.share);
  const worths = Float64Array.from(plain.worth);
  // The unlisted cause has no records of its own, and the observable is not about it.
  for (let c = 0; c <= C; c += 1) {
    const on = c < C && layout.onTarget[observable * C + c] === 1;
    const worth = plain.worth[c] as number;
    values.forEach((value, i) => {
      const counted = stateCountOf(counts, { state, cause: c < C ? c : null, observable, value });
      const known = shareInState(
        { share: plain.share[c * V + i] as number, worth },
        counted,
        { on, offShare: shares.off[value] as number, settings: kind.state },
      );
      share[c * V + i] = known.share;
      worths[c] = known.worth;
    });
  }
  return { share, worth: worths };
}

/**
 * Shares of values per cause on a device. From far to near every record counts once; what is known so far enters
 * each nearer step as a Dirichlet prior whose strength 1/(1/worth + 1/concentration) is limited by how much devices
 * differ there. It starts at the shares of the cause's group (about the cause, or not).
 */
export function valueShares(counts: Counts, { settings, stepsOf, shares, observable, values }: Input): ValueShares {
  const { layout } = counts;
  const C = layout.causeCount;
  const V = values.length;
  const first = layout.valueStarts[observable] as number;
  const end = layout.valueStarts[observable + 1] as number;
  const kind = settings.values[layout.kinds[observable] as number] as ValueSettings;
  const factor = settings.concentrationFactors[observable] as number;
  const unit = COUNT_UNIT;
  const share = new Float64Array((C + 1) * V);
  const worths = new Float64Array(C + 1);
  const counted = new Float64Array(end - first);
  for (let c = 0; c < C; c += 1) {
    const on = layout.onTarget[observable * C + c] === 1;
    for (let i = 0; i < V; i += 1) {
      const value = values[i] as number;
      share[c * V + i] = on ? (shares.on[value] as number) : shares.near(c, value);
    }
    let worth = factor * ownConcentration(layout, kind, { observable, on });
    for (const step of stepsOf(c)) {
      worth = limitedWorth(worth, step.place, kind);
      if (step.add.length === 0) continue;
      stepCounts(counts, step, { first, end, into: counted });
      let total = 0;
      for (const n of counted) total += n;
      if (total === 0) continue;
      total /= unit;
      for (let i = 0; i < V; i += 1) {
        const n = (counted[values[i] as number] as number) / unit;
        share[c * V + i] = (n + worth * (share[c * V + i] as number)) / (total + worth);
      }
      worth += total;
    }
    worths[c] = worth;
  }
  for (let i = 0; i < V; i += 1) share[C * V + i] = shares.all[values[i] as number] as number;
  worths[C] = factor * kind.offTarget;
  return { share, worth: worths };
}

/**
 * What clears a cause counts in full at least: where the observable's exponent is below 1, a cleared cause's share of
 * the working value is taken to the power 1/exponent, and its other values share out the rest as before. The exponent
 * is below 1 because findings repeat one another; for the cause itself its working value is seldom a repetition.
 */
function clearInFull(layout: Layout, input: { table: Float64Array; observable: number; weight: number }): Float64Array {
  const { table, observable, weight } = input;
  const usual = layout.workingValues?.[observable] ?? -1;
  if (layout.clearing?.[observable] !== 1 || usual < 0 || !(weight < 1)) return table;
  const C = layout.causeCount;
  const K = layout.valueCounts[observable] as number;
  const power = 1 / Math.max(weight, LEAST_CLEARING_WEIGHT);
  const cleared = Float64Array.from(table);
  for (let c = 0; c < C; c += 1) {
    if (layout.onTarget[observable * C + c] !== 1) continue;
    const share = table[c * K + usual] as number;
    const sharpened = share ** power;
    for (let v = 0; v < K; v += 1) cleared[c * K + v] = (table[c * K + v] as number) * ((1 - sharpened) / (1 - share));
    cleared[c * K + usual] = sharpened;
  }
  return cleared;
}

function column(table: Float64Array, values: number, value: number): Float64Array {
  return Float64Array.from({ length: table.length / values }, (_, c) => table[c * values + value] as number);
}

/** How many records the shares of a cause's group are worth to the cause itself. */
export function ownConcentration(layout: Layout, kind: ValueSettings, { observable, on }: { observable: number; on: boolean }): number {
  if (!on) return kind.offTarget;
  return layout.clearing?.[observable] === 1 ? kind.cleared : kind.onTarget;
}

/** What is known from further away is worth at most the concentration of the step. */
export function limitedWorth(worth: number, place: number, limits: { levels: readonly number[]; part: number }): number {
  if (place < 0) return worth;
  const limit = place === PART_PLACE ? limits.part : (limits.levels[place] as number);
  return 1 / (1 / worth + 1 / limit);
}

/** Which shares: on a device, of units in a state (-1 where it is not known), of one value or of all values of an observable. */
export type SharesAsked = { device: number; state: number; observable: number; value?: number };
export type SharesOf = (asked: SharesAsked) => KnownShares;

/** What is known of one device: the steps to it by cause, and shares by the unit's state and by value or observable. */
type DeviceTables = { steps: (ValueStep[] | undefined)[]; known: Map<number, KnownShares>[] };

/** Value shares by device, computed when first asked for and again once the counts have changed; kept for the devices asked about last. */
export function createValueShares(counts: Counts, settings: Settings): SharesOf {
  const { layout } = counts;
  const groups = createGroupShares(counts, settings);
  const devices = new Map<number, DeviceTables>();
  let newest: { device: number; tables: DeviceTables } | undefined;
  let revision = counts.revision;
  return ({ device, state, observable, value }) => {
    if (revision !== counts.revision) {
      devices.clear();
      newest = undefined;
      revision = counts.revision;
    }
    if (device !== newest?.device) {
      newest = { device, tables: devices.get(device) ?? { steps: [], known: [] } };
      // A map lists its entries in the order in which they were put: the first is the device not asked about longest.
      devices.delete(device);
      devices.set(device, newest.tables);
      const [oldest] = devices.keys();
      if (devices.size > DEVICES_KEPT && oldest !== undefined) devices.delete(oldest);
    }
    const here = newest.tables;
    // Whole tables have negative keys.
    const key = value === undefined ? -1 - observable : (layout.valueStarts[observable] as number) + value;
    // Only checks depend on the state, so the others are kept once.
    const known = here.known[layout.kinds[observable] === CHECK ? state + 1 : 0] ?? new Map<number, KnownShares>();
    here.known[layout.kinds[observable] === CHECK ? state + 1 : 0] = known;
    let shares = known.get(key);
    if (shares === undefined) {
      const stepsOf = (cause: number) => {
        here.steps[cause] ??= valueSteps(counts, device, cause);
        return here.steps[cause] as ValueStep[];
      };
      const every = Array.from({ length: layout.valueCounts[observable] as number }, (_, v) => v);
      const whole = value === undefined || layout.clearing?.[observable] === 1;
      const values = whole ? every : [value];
      const input = { settings, stepsOf, shares: groups(observable), observable, values };
      const plain = inState(counts, { ...input, plain: valueShares(counts, input), state });
      const table = clearInFull(layout, { table: plain.share, observable, weight: settings.weights[observable] as number });
      const computed = { share: whole && value !== undefined ? column(table, every.length, value) : table, worth: plain.worth };
      let moments: LogMoments | undefined;
      let logs: Float64Array | undefined;
      shares = {
        ...computed,
        logs: () => {
          logs ??= computed.share.map(Math.log);
          return logs;
        },
        moments: () => {
          moments ??= logShareMoments(computed.share, computed.worth);
          return moments;
        },
      };
      known.set(key, shares);
    }
    return shares;
  };
}
