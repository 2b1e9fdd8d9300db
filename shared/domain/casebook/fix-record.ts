import { FIX_RESULTS, type FixResult } from '../../schemas/case';
import type { FixSuggestion } from '../../schemas/look-up';
import { type FixCounts, fixSuccess, rankFixSuccess } from '../../stats/decide/fix-success';
import { devicePath } from '../../stats/findings';
import type { CaseEntry } from './case-entry';
import type { CasebookModel } from './casebook-model';

/** Which cases to count fixes over; what is left out does not narrow. */
export type FixScope = {
  /** Symptoms that the case must carry as present. */
  symptoms?: readonly string[];
  device?: string | null;
  cause?: string | null;
};

type Tally = { tries: number; cures: number; partial: number; noChange: number; madeWorse: number };

const KEYS: Record<FixResult, keyof Tally | null> = {
  cured: 'cures',
  partly: 'partial',
  'no-change': 'noChange',
  'symptom-changed': null,
  'made-worse': 'madeWorse',
};

/**
 * Which fix most often resolved it: tries and results of every fix tried at least once in the scope, ranked by the
 * lower end of the interval of the share cured, pooled along the device path; those never tried on the device itself
 * stand after those that were. Fixes done together count as one try
 * of each. The counts are the device's own (all devices where none is given); interval and
 * estimate borrow from the rest of the path where these are few.
 */
export function fixRecord(model: CasebookModel, scope: FixScope): FixSuggestion[] {
  const { layout } = model.coding;
  const node = scope.device ? (model.coding.deviceOf(scope.device) ?? 0) : 0;
  const path = devicePath(layout, node);
  const tallies = new Map<number, Tally[]>();
  const needed = (scope.symptoms ?? []).map((slug) => model.coding.observableOf('symptom', slug));
  for (const entry of model.entries.values()) {
    if (!inScope(entry, needed, scope.cause ?? null)) continue;
    const depth = sharedDepth(path, devicePath(layout, entry.coded.device));
    for (const attempt of entry.attempts)
      for (const fix of attempt.fixes) count(tallies, fix, { depth, path, result: attempt.result });
  }
  const tried = [...tallies].map(([fix, counts]) => ({ fix, success: fixSuccess(counts as FixCounts[]) }));
  const ranked = rankFixSuccess(tried.map((t) => t.success));
  const triedHere = (index: number) => (tried[index]?.success.tries ?? 0) > 0;
  return [...ranked.filter(triedHere), ...ranked.filter((index) => !triedHere(index))].flatMap((index) => {
    const { fix, success } = tried[index] as (typeof tried)[number];
    const id = model.coding.observables[fix]?.id;
    const entry = id === undefined ? undefined : model.words.fixes.get(id);
    if (!entry) return [];
    const { tries, cures, partial, noChange, madeWorse, pooledLow, pooledHigh, estimate } = success;
    return [
      {
        id: entry.slug,
        label: entry.label,
        tried: tries,
        resolved: cures,
        partly: partial,
        noChange,
        madeWorse,
        low: pooledLow,
        high: pooledHigh,
        estimate,
      },
    ];
  });
}

function inScope(entry: CaseEntry, needed: readonly (number | undefined)[], cause: string | null): boolean {
  if (cause !== null && !entry.causes.some((c) => c.cause === cause)) return false;
  return needed.every((observable) => entry.coded.findings.some((f) => f.observable === observable && f.value === 1));
}

/** How many nodes from the root the two paths share. */
function sharedDepth(a: readonly number[], b: readonly number[]): number {
  let depth = 0;
  while (depth < a.length && a[depth] === b[depth]) depth++;
  return depth;
}

function count(tallies: Map<number, Tally[]>, fix: number, at: { depth: number; path: readonly number[]; result: number }): void {
  let tally = tallies.get(fix);
  if (!tally) {
    tally = at.path.map(() => ({ tries: 0, cures: 0, partial: 0, noChange: 0, madeWorse: 0 }));
    tallies.set(fix, tally);
  }
  const key = KEYS[FIX_RESULTS[at.result] as FixResult];
  for (const node of tally.slice(0, at.depth)) {
    node.tries += 1;
    if (key !== null) node[key] += 1;
  }
}
