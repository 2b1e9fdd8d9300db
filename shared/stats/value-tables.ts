import { COUNT_UNIT, type Counts, partRowKey } from './counts';
import { devicePath } from './findings';
import { createGroupShares, type GroupShares } from './group-shares';
import type { Layout } from './layout';
import type { Settings, ValueSettings } from './settings';

/** P(v | cause, device) of one observable: `share[c * K + v]`, and how many records each cause's row is worth. */
export type ValueTable = { share: Float64Array; worth: Float64Array };

type Row = Int32Array | undefined;
type DeviceRows = { depths: number[]; full: Row[][]; part: Row[][]; parts: Int32Array };

/** Rows of the counts along a device's path: whole subtrees, and their boards with the same part, per cause. */
export function deviceRows(counts: Counts, device: number): DeviceRows {
  const { layout } = counts;
  const C = layout.causeCount;
  const path = devicePath(layout, device);
  const parts = layout.partClasses.subarray(device * C, (device + 1) * C);
  const rows = (key: (node: number, cause: number) => number, of: Map<number, Int32Array>) =>
    path.map((node) => Array.from({ length: C }, (_, cause) => of.get(key(node, cause))));
  return {
    depths: path.map((node) => layout.deviceDepths[node] as number),
    full: rows((node, cause) => node * C + cause, counts.nodeRows),
    part: rows((node, cause) => partRowKey(layout, { part: parts[cause] as number, cause, node }), counts.partRows),
    parts,
  };
}

/**
 * Shares of values per cause on a device. From far to near (other categories, makers, models, boards, then boards
 * with the very same part, then the board itself) every record counts once; what is known so far enters each nearer
 * step as a Dirichlet prior whose strength 1/(1/worth + 1/concentration) is limited by how much devices differ there.
 */
export function valueTable(
  counts: Counts,
  { settings, rows, shares, observable }: { settings: Settings; rows: DeviceRows; shares: GroupShares; observable: number },
): ValueTable {
  const { layout } = counts;
  const C = layout.causeCount;
  const K = layout.valueCounts[observable] as number;
  const kind = settings.values[layout.kinds[observable] as number] as ValueSettings;
  const factor = settings.concentrationFactors[observable] as number;
  const table = { share: new Float64Array((C + 1) * K), worth: new Float64Array(C + 1) };
  for (let c = 0; c < C; c += 1) {
    const on = layout.onTarget[observable * C + c] === 1;
    table.share.set(on ? shares.on : shares.off, c * K);
    let worth = factor * (on ? kind.onTarget : kind.offTarget);
    for (const step of pathSteps(rows, c, kind)) {
      if (step.limit !== Number.POSITIVE_INFINITY) worth = 1 / (1 / worth + 1 / step.limit);
      worth = absorb(layout, { table, step, worth, cause: c, observable });
    }
    table.worth[c] = worth;
  }
  table.share.set(shares.all, C * K);
  table.worth[C] = factor * kind.offTarget;
  return table;
}

/** Records that count at one step: those of `add` less those of `less`. */
type Step = { limit: number; add: Row[]; less: Row[] };

/** The steps from the root to the device for one cause. */
export function pathSteps(rows: DeviceRows, cause: number, kind: ValueSettings): Step[] {
  const last = rows.depths.length - 1;
  const part = (rows.parts[cause] as number) >= 0;
  const steps: Step[] = [];
  for (let level = 0; level <= last; level += 1) {
    const depth = rows.depths[level] as number;
    const limit = level === 0 ? Number.POSITIVE_INFINITY : (kind.levels[depth - 1] as number);
    const here = rows.full[level]?.[cause];
    const own = rows.part[last]?.[cause];
    if (level === last) {
      if (part) steps.push({ limit: kind.part, add: [rows.part[0]?.[cause]], less: [own] });
      steps.push({ limit, add: [here], less: [] });
    } else {
      const nearer = rows.full[level + 1]?.[cause];
      if (!part) steps.push({ limit, add: [here], less: [nearer] });
      else steps.push({ limit, add: [here, rows.part[level + 1]?.[cause]], less: [nearer, rows.part[level]?.[cause]] });
    }
  }
  return steps;
}

function absorb(
  layout: Layout,
  { table, step, worth, cause, observable }: { table: ValueTable; step: Step; worth: number; cause: number; observable: number },
): number {
  const K = layout.valueCounts[observable] as number;
  const start = layout.valueStarts[observable] as number;
  let total = 0;
  for (let v = 0; v < K; v += 1) total += stepCount(step, start + v);
  if (total === 0) return worth;
  for (let v = 0; v < K; v += 1) {
    const at = cause * K + v;
    table.share[at] = (stepCount(step, start + v) / COUNT_UNIT + worth * (table.share[at] as number)) / (total / COUNT_UNIT + worth);
  }
  return worth + total / COUNT_UNIT;
}

/** Weight at one flat value, in 600ths. */
export function stepCount(step: Step, flat: number): number {
  let n = 0;
  for (const row of step.add) if (row !== undefined) n += row[flat] as number;
  for (const row of step.less) if (row !== undefined) n -= row[flat] as number;
  return n;
}

/** Value tables by device and observable, computed when first asked for and again once the counts have changed. */
export function createValueTables(counts: Counts, settings: Settings): (device: number, observable: number) => ValueTable {
  const shares = createGroupShares(counts, settings);
  const devices = new Map<number, { rows: DeviceRows; tables: Map<number, ValueTable> }>();
  let revision = counts.revision;
  return (device, observable) => {
    if (revision !== counts.revision) {
      devices.clear();
      revision = counts.revision;
    }
    let known = devices.get(device);
    if (known === undefined) {
      known = { rows: deviceRows(counts, device), tables: new Map() };
      devices.set(device, known);
    }
    let table = known.tables.get(observable);
    if (table === undefined) {
      table = valueTable(counts, { settings, rows: known.rows, shares: shares(observable), observable });
      known.tables.set(observable, table);
    }
    return table;
  };
}
