import type { Board } from '../../schemas/device';
import type { Cause, Vocabulary } from '../../schemas/vocabulary';
import { CHECK, FIX, type Layout, SYMPTOM } from '../../stats/layout';
import type { NamedObservable } from './coding';
import { type DeviceNode, LEVEL_DEPTHS } from './device-tree';

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
