import { COUNT_UNIT, type Counts } from './counts';
import { createGroupShares, type GroupShares } from './group-shares';
import type { Layout } from './layout';
import type { Settings, ValueSettings } from './settings';
import { PART_PLACE, stepCount, type ValueStep, valueSteps } from './value-steps';

/** P(v | cause, device) of one observable: `share[c * K + v]`, and how many records each cause's row is worth. */
export type ValueTable = { share: Float64Array; worth: Float64Array };

/**
 * Shares of values per cause on a device. From far to near every record counts once; what is known so far enters
 * each nearer step as a Dirichlet prior whose strength 1/(1/worth + 1/concentration) is limited by how much devices
 * differ there. It starts at the shares of the cause's group (about the cause, or not).
 */
export function valueTable(
  layout: Layout,
  input: { settings: Settings; stepsOf: (cause: number) => readonly ValueStep[]; shares: GroupShares; observable: number },
): ValueTable {
  const { settings, stepsOf, shares, observable } = input;
  const C = layout.causeCount;
  const K = layout.valueCounts[observable] as number;
  const start = layout.valueStarts[observable] as number;
  const kind = settings.values[layout.kinds[observable] as number] as ValueSettings;
  const factor = settings.concentrationFactors[observable] as number;
  const table = { share: new Float64Array((C + 1) * K), worth: new Float64Array(C + 1) };
  const counted = new Float64Array(K);
  for (let c = 0; c < C; c += 1) {
    const on = layout.onTarget[observable * C + c] === 1;
    table.share.set(on ? shares.on : shares.off, c * K);
    let worth = factor * (on ? kind.onTarget : kind.offTarget);
    for (const step of stepsOf(c)) {
      worth = limitedWorth(worth, step.place, kind);
      let total = 0;
      for (let v = 0; v < K; v += 1) {
        counted[v] = stepCount(step, start + v) / COUNT_UNIT;
        total += counted[v] as number;
      }
      if (total === 0) continue;
      for (let at = c * K, v = 0; v < K; v += 1, at += 1) {
        table.share[at] = ((counted[v] as number) + worth * (table.share[at] as number)) / (total + worth);
      }
      worth += total;
    }
    table.worth[c] = worth;
  }
  table.share.set(shares.all, C * K);
  table.worth[C] = factor * kind.offTarget;
  return table;
}

/** What is known from further away is worth at most the concentration of the step. */
export function limitedWorth(worth: number, place: number, limits: { levels: readonly number[]; part: number }): number {
  if (place < 0) return worth;
  const limit = place === PART_PLACE ? limits.part : (limits.levels[place] as number);
  return 1 / (1 / worth + 1 / limit);
}

type DeviceTables = { steps: (ValueStep[] | undefined)[]; tables: Map<number, ValueTable> };

/** Value tables by device and observable, computed when first asked for and again once the counts have changed. */
export function createValueTables(counts: Counts, settings: Settings): (device: number, observable: number) => ValueTable {
  const { layout } = counts;
  const shares = createGroupShares(counts, settings);
  const devices = new Map<number, DeviceTables>();
  let revision = counts.revision;
  return (device, observable) => {
    if (revision !== counts.revision) {
      devices.clear();
      revision = counts.revision;
    }
    const known = devices.get(device) ?? { steps: [], tables: new Map<number, ValueTable>() };
    devices.set(device, known);
    let table = known.tables.get(observable);
    if (table === undefined) {
      const stepsOf = (cause: number) => {
        known.steps[cause] ??= valueSteps(counts, device, cause);
        return known.steps[cause] as ValueStep[];
      };
      table = valueTable(layout, { settings, stepsOf, shares: shares(observable), observable });
      known.tables.set(observable, table);
    }
    return table;
  };
}
