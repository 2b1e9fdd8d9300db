import { COUNT_UNIT, type Counts } from './counts';
import { type CauseTallies, createCauseTallies, evenlyHeard } from './cause-tallies';
import { createKinCounts, type KinCounts, leanOnKin } from './kin-shares';
import { CHECK, FIX, type Layout } from './layout';
import type { Settings, ValueSettings } from './settings';

/**
 * Shares of an observable's values over groups of causes: those it is about ("on"), those it is not ("off"),
 * and everyone, records without a found cause included. These are the q_v that a cause's own shares shrink to.
 */
export type GroupShares = {
  on: Float64Array;
  off: Float64Array;
  all: Float64Array;
  /** Share of a value that one cause off target leans on: that of `off`, as its kin have it. */
  near(cause: number, value: number): number;
};

/** Lazily computed group shares; a result stays valid until the counts change. */
export function createGroupShares(counts: Counts, settings: Settings, tallies = createCauseTallies(counts)): (observable: number) => GroupShares {
  const { layout } = counts;
  const known = new Map<number, GroupShares>();
  const kinOf = createKinCounts(counts, tallies);
  let generic: Generic | undefined;
  let revision = counts.revision;
  return (observable) => {
    if (revision !== counts.revision) {
      known.clear();
      generic = undefined;
      revision = counts.revision;
    }
    let shares = known.get(observable);
    if (shares === undefined) {
      const own = settings.values[layout.kinds[observable] as number] as ValueSettings;
      const strength = { off: own.group, on: layout.clearing?.[observable] === 1 ? own.clearedGroup : own.group };
      const heard = { tallies: tallies(observable), worth: own.heard };
      generic ??= genericShares(counts);
      const groups = groupShares(counts, observable, { strength, generic, heard });
      shares = withKin(groups, () => kinOf(observable), own);
      known.set(observable, shares);
    }
    return shares;
  };
}

/** A group's shares before kin are looked at. */
type Groups = Omit<GroupShares, 'near'>;

type Tally = { on: Float64Array; off: Float64Array; all: Float64Array; anyOn: boolean };

/** Weighted numbers of records per value, by group. */
function tally(counts: Counts, observable: number): Tally {
  const { layout } = counts;
  const start = layout.valueStarts[observable] as number;
  const end = layout.valueStarts[observable + 1] as number;
  const inRecords = (cells: Int32Array) => Float64Array.from(cells.subarray(start, end), (n) => n / COUNT_UNIT);
  const on = inRecords(counts.onTargetValues);
  const off = inRecords(counts.offTargetValues);
  const unresolved = inRecords(counts.unresolvedValues);
  const all = on.map((n, v) => n + (off[v] as number) + (unresolved[v] as number));
  const anyOn = isAimed(layout, observable);
  // Whom an unresolved unit's check was about is not known; where nothing is on target all are off.
  return { on, off: anyOn ? off : all, all, anyOn };
}

function withKin(groups: Groups, kin: () => KinCounts | null, settings: ValueSettings): GroupShares {
  const limits = { worth: settings.kin, pull: settings.group };
  return {
    ...groups,
    near: (cause, value) => {
      const start = groups.off[value] as number;
      const counted = kin()?.of(cause, value) ?? null;
      return counted === null ? start : leanOnKin(start, counted, limits);
    },
  };
}

const aimed = new WeakMap<Layout, Uint8Array>();

/** Whether the observable is about any cause at all. */
function isAimed(layout: Layout, observable: number): boolean {
  let known = aimed.get(layout);
  if (known === undefined) {
    const C = layout.causeCount;
    known = layout.kinds.map((_, o) => (layout.onTarget.subarray(o * C, (o + 1) * C).includes(1) ? 1 : 0));
    aimed.set(layout, known);
  }
  return known[observable] === 1;
}

type Generic = { fixOn: Float64Array; fixOff: Float64Array; working: Record<'cleared' | 'on' | 'off', number> };

/** Over all fixes: the share of each result; over all checks: the share of what a working unit shows. */
function genericShares(counts: Counts): Generic {
  const { layout } = counts;
  const results = fixResultCount(counts);
  const fixes = { on: new Float64Array(results), off: new Float64Array(results) };
  // Before anything is counted: one pseudo-record that fits the causes cleared badly, and the others well.
  const working = { cleared: [0.1, 1], on: [0.5, 1], off: [1.5, 2] };
  for (let o = 0; o < layout.kinds.length; o += 1) {
    const kind = layout.kinds[o];
    if (kind !== FIX && kind !== CHECK) continue;
    const usual = layout.workingValues?.[o] ?? -1;
    if (kind === CHECK && usual < 0) continue;
    const counted = tally(counts, o);
    if (!counted.anyOn) continue;
    for (const group of ['on', 'off'] as const) {
      counted[group].forEach((n, v) => {
        if (kind === FIX) fixes[group][v] = (fixes[group][v] as number) + n;
        else {
          const sum = working[group === 'on' && layout.clearing?.[o] === 1 ? 'cleared' : group];
          sum[0] = (sum[0] as number) + (v === usual ? n : 0);
          sum[1] = (sum[1] as number) + n;
        }
      });
    }
  }
  return {
    fixOn: normalised(fixes.on, 1),
    fixOff: normalised(fixes.off, 1),
    working: { cleared: ratio(working.cleared), on: ratio(working.on), off: ratio(working.off) },
  };
}

function ratio(sum: readonly number[]): number {
  return (sum[0] as number) / (sum[1] as number);
}

function fixResultCount(counts: Counts): number {
  const first = counts.layout.kinds.indexOf(FIX);
  return first < 0 ? 0 : (counts.layout.valueCounts[first] as number);
}

/** How far each cause's records are heard in what the others lean on. */
type Heard = { tallies: CauseTallies; worth: number };

function groupShares(
  counts: Counts,
  observable: number,
  { strength, generic, heard }: { strength: { on: number; off: number }; generic: Generic; heard: Heard },
): Groups {
  const { layout } = counts;
  const counted = tally(counts, observable);
  const K = counted.all.length;
  const heardOff = evenlyHeard(heard.tallies, heard.worth);
  if (!counted.anyOn) {
    addUnresolved(counts, { observable, worth: heard.worth, into: heardOff });
    const all = normalised(heardOff, 1);
    return { on: all, off: all, all };
  }
  if (layout.kinds[observable] === FIX && K === generic.fixOn.length) {
    const off = pulled(heardOff, generic.fixOff, strength.off);
    return { on: pulled(counted.on, generic.fixOn, strength.on), off, all: off };
  }
  const usual = layout.workingValues?.[observable] ?? -1;
  const all = normalised(counted.all, 1);
  if (usual < 0) return { on: pulled(counted.on, all, strength.on), off: pulled(heardOff, all, strength.off), all };
  const workingOn = layout.clearing?.[observable] === 1 ? generic.working.cleared : generic.working.on;
  const on = pulled(counted.on, aroundWorking(counted.all, usual, workingOn), strength.on);
  const off = pulled(heardOff, aroundWorking(counted.all, usual, generic.working.off), strength.off);
  return { on, off, all: pulled(counted.all, off, 1) };
}

/** Units whose cause was not found are heard like one more cause: what they showed counts, what they had is not known. */
function addUnresolved(counts: Counts, { observable, worth, into }: { observable: number; worth: number; into: Float64Array }): void {
  const first = counts.layout.valueStarts[observable] as number;
  const unresolved = Float64Array.from(into, (_, v) => (counts.unresolvedValues[first + v] as number) / COUNT_UNIT);
  const scale = 1 / (1 + unresolved.reduce((sum, n) => sum + n, 0) / worth);
  unresolved.forEach((n, v) => {
    into[v] = (into[v] as number) + scale * n;
  });
}

/** The working outcome has the given share; the others divide the rest as they were seen. */
function aroundWorking(seen: Float64Array, usual: number, share: number): Float64Array {
  const others = Float64Array.from(seen, (n, v) => (v === usual ? 0 : n + 0.5));
  const total = others.reduce((sum, n) => sum + n, 0);
  return others.map((n, v) => (v === usual ? share : ((1 - share) * n) / total));
}

/** Shares with `pseudo` records spread evenly over the values. */
function normalised(n: Float64Array, pseudo: number): Float64Array {
  return pulled(n, new Float64Array(n.length).fill(1 / n.length), pseudo);
}

function pulled(n: Float64Array, towards: Float64Array, strength: number): Float64Array {
  const total = n.reduce((sum, x) => sum + x, 0);
  return n.map((x, v) => (x + strength * (towards[v] as number)) / (total + strength));
}
