import type { Board } from '../../schemas/device';
import type { Cause, Vocabulary } from '../../schemas/vocabulary';
import { CHECK, FIX, type Layout, SYMPTOM } from '../../stats/layout';
import type { NamedObservable } from './coding';
import { type DeviceNode, LEVEL_DEPTHS } from './device-tree';
import { findHiders } from './find-hiders';

const KINDS = { symptom: SYMPTOM, check: CHECK, fix: FIX } as const;

/** The layout of a vocabulary's observables and causes on a device tree. */
export function buildLayout(vocabulary: Vocabulary, devices: readonly DeviceNode[], observables: readonly NamedObservable[]): Layout {
  const valueStarts = new Uint32Array(observables.length + 1);
  observables.forEach((o, i) => {
    valueStarts[i + 1] = (valueStarts[i] as number) + o.values.length;
  });
  return {
    causeCount: vocabulary.causes.length,
    kinds: Uint8Array.from(observables, (o) => KINDS[o.kind]),
    valueCounts: Uint16Array.from(observables, (o) => o.values.length),
    valueStarts,
    onTarget: onTarget(vocabulary, observables),
    workingValues: workingValues(vocabulary, observables),
    clearing: clearing(vocabulary, observables),
    deviceParents: Int32Array.from(devices, (node) => node.parent),
    deviceDepths: Uint8Array.from(devices, (node) => LEVEL_DEPTHS[node.level]),
    ...partClasses(vocabulary.causes, devices),
    impossible: impossibleCauses(vocabulary, devices),
    kin: causeKin(vocabulary),
    showsState: showsState(vocabulary, observables),
  };
}

function onTarget(vocabulary: Vocabulary, observables: readonly NamedObservable[]): Uint8Array {
  const checkRoles = new Map(vocabulary.checks.map((check) => [check.slug, check.clears?.length ? check.clears : [check.targetRole]]));
  const addressed = new Map(vocabulary.fixes.map((fix) => [fix.slug, new Set(fix.addresses)]));
  const about = (o: NamedObservable, cause: Cause) => {
    if (o.kind === 'check') return checkRoles.get(o.id)?.includes(cause.role) === true;
    return o.kind === 'fix' && addressed.get(o.id)?.has(cause.slug) === true;
  };
  return Uint8Array.from(observables.flatMap((o) => vocabulary.causes.map((cause) => (about(o, cause) ? 1 : 0))));
}

function workingValues(vocabulary: Vocabulary, observables: readonly NamedObservable[]): Int16Array {
  const working = new Map(vocabulary.checks.map((check) => [check.slug, check.workingOutcome]));
  return Int16Array.from(observables, (o) => (o.kind === 'check' ? o.values.indexOf(working.get(o.id) ?? '') : -1));
}

/** Checks of which the vocabulary says what their working outcome clears. */
function clearing(vocabulary: Vocabulary, observables: readonly NamedObservable[]): Uint8Array {
  const stated = new Set(vocabulary.checks.filter((check) => check.clears?.length).map((check) => check.slug));
  return Uint8Array.from(observables, (o) => (o.kind === 'check' && stated.has(o.id) ? 1 : 0));
}

/** Boards share a class where the parts of the cause's role carry the same part numbers. */
function partClasses(causes: readonly Cause[], devices: readonly DeviceNode[]): Pick<Layout, 'partClasses' | 'partClassCount'> {
  const ids = new Map<string, number>();
  const classes = new Int32Array(devices.length * causes.length).fill(-1);
  devices.forEach((node, d) => {
    if (node.board === null) return;
    const numbers = partNumbersByRole(node.board);
    causes.forEach((cause, c) => {
      const key = numbers.get(cause.role);
      if (key === undefined) return;
      const name = `${cause.role} ${key}`;
      if (!ids.has(name)) ids.set(name, ids.size);
      classes[d * causes.length + c] = ids.get(name) as number;
    });
  });
  return { partClasses: classes, partClassCount: ids.size };
}

/** Sorted part numbers of each role on a board; roles with a part of no standard number are left out. */
function partNumbersByRole(board: Board): Map<string, string> {
  const numbers = new Map<string, Set<string | null>>();
  for (const part of board.parts) {
    const known = numbers.get(part.role) ?? new Set();
    numbers.set(part.role, known.add(part.partNumber));
  }
  const named = [...numbers].filter(([, set]) => !set.has(null));
  return new Map(named.map(([role, set]) => [role, [...set].sort().join(' + ')]));
}

/** Causes of another category, and on boards causes of a role that other boards list and this one does not. */
function impossibleCauses(vocabulary: Vocabulary, devices: readonly DeviceNode[]): Uint8Array {
  const rolesOf = devices.map((node) => (node.board === null ? null : new Set(node.board.parts.map((part) => part.role))));
  const listed = new Set(rolesOf.flatMap((roles) => [...(roles ?? [])]));
  return Uint8Array.from(
    devices.flatMap((node, d) =>
      vocabulary.causes.map((cause) => {
        if (node.category !== null && !cause.categories.includes(node.category)) return 1;
        const roles = rolesOf[d];
        return roles && listed.has(cause.role) && !roles.has(cause.role) ? 1 : 0;
      }),
    ),
  );
}

/** Share of all symptoms that a symptom hides, from which on it shows a state: much is hidden, or nearly all is. */
const STATE_SHARES = [1 / 6, 1 / 2];

/** The state that each symptom shows when present: 2 for one that hides most others (a dead unit), 1 for one that hides many. */
function showsState(vocabulary: Vocabulary, observables: readonly NamedObservable[]): Uint8Array {
  const hidden = new Map<string, number>();
  for (const hiders of findHiders(vocabulary.symptoms).values()) for (const hider of hiders) hidden.set(hider, (hidden.get(hider) ?? 0) + 1);
  const shareHidden = (id: string) => (hidden.get(id) ?? 0) / vocabulary.symptoms.length;
  return Uint8Array.from(observables, ({ kind, id }) => (kind === 'symptom' ? STATE_SHARES.filter((least) => shareHidden(id) >= least).length : 0));
}

/**
 * Causes by area of the unit, then by part role. A role is of the area that most of the checks aimed at it are of; what a check
 * clears counts half. Roles that no check is aimed at belong to no area.
 */
function causeKin({ causes, checks }: Vocabulary): Int32Array[] {
  const votes = new Map<string, Map<string, number>>();
  const vote = (role: string, area: string, by: number) => {
    const ofRole = votes.get(role) ?? new Map<string, number>();
    votes.set(role, ofRole.set(area, (ofRole.get(area) ?? 0) + by));
  };
  for (const { area, targetRole, clears } of checks) {
    vote(targetRole, area, 1);
    for (const role of clears ?? []) if (role !== targetRole) vote(role, area, 0.5);
  }
  const areaOf = (role: string) => [...(votes.get(role) ?? [])].reduce((a, b) => (b[1] > a[1] ? b : a), ['', 0])[0];
  return [numbered(causes.map(({ role }) => areaOf(role))), numbered(causes.map(({ role }) => role))];
}

/** Numbers for names in the order of their first use; -1 for no name. */
function numbered(names: readonly string[]): Int32Array {
  const numbers = new Map<string, number>();
  return Int32Array.from(names, (name) => {
    if (name === '') return -1;
    if (!numbers.has(name)) numbers.set(name, numbers.size);
    return numbers.get(name) as number;
  });
}
