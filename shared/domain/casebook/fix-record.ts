import { FIX_RESULTS, type FixResult } from '../../schemas/case';
import type { FixSuggestion } from '../../schemas/look-up';
import { fixSuccess, rankFixSuccess } from '../../stats/decide/fix-success';
import { devicePath } from '../../stats/findings';
import { intersectLists, type PostingList } from '../../stats/posting-list';
import { fixValues, isLive, type RecordIndex } from '../../stats/record-index';
import { forEachAttempt } from '../../stats/record-words';
import { cameBackIn } from './came-back';
import type { CasebookModel } from './casebook-model';

/** Which cases to count fixes over; what is left out does not narrow. */
export type FixScope = {
  /** Symptoms that the case must carry as present. */
  symptoms?: readonly string[];
  device?: string | null;
  cause?: string | null;
};

type Tally = { tries: number; cures: number; partial: number; noChange: number; madeWorse: number; cameBack: number };

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
  const lists = scopeLists(model, scope);
  if (lists === null) return [];
  const results = lists.length === 0 ? attemptsOnPath(model.index, path) : attemptsInScope(model.index, lists, path);
  const counted = tallies(model.index, results);
  for (const { row, fixes } of cameBackIn(model, scope)) {
    const depth = sharedDepths(model.index, path)[model.index.device[row] as number] as number;
    for (const { fix, path: levels } of counted) if (fixes.includes(fix)) for (const level of levels.slice(0, depth)) takeBack(level);
  }
  const tried = counted.map(({ fix, path: levels }) => ({ fix, success: fixSuccess(levels) }));
  const ranked = rankFixSuccess(tried.map((t) => t.success));
  const triedHere = (index: number) => (tried[index]?.success.tries ?? 0) > 0;
  return [...ranked.filter(triedHere), ...ranked.filter((index) => !triedHere(index))].flatMap((index) => {
    const { fix, success } = tried[index] as (typeof tried)[number];
    const id = model.coding.observables[fix]?.id;
    const entry = id === undefined ? undefined : model.words.fixes.get(id);
    if (!entry) return [];
    const { tries, cures, partial, noChange, madeWorse, cameBack, pooledLow, pooledHigh, estimate } = success;
    return [
      {
        id: entry.slug,
        label: entry.label,
        tried: tries,
        resolved: cures,
        partly: partial,
        noChange,
        madeWorse,
        cameBack,
        low: pooledLow,
        high: pooledHigh,
        estimate,
      },
    ];
  });
}

/** A cure that came back is no cure any more. */
function takeBack(tally: Tally): void {
  tally.cures -= 1;
  tally.cameBack += 1;
}

/** Lists of rows that a case must be in; none where every case counts, null where no case can. */
function scopeLists({ coding, index }: CasebookModel, { symptoms = [], cause = null }: FixScope): PostingList[] | null {
  const flats = symptoms.map((slug) => {
    const observable = coding.observableOf('symptom', slug);
    return observable === undefined ? -1 : (index.layout.valueStarts[observable] as number) + 1;
  });
  const lists = flats.map((flat) => index.byValue[flat]);
  if (cause !== null) lists.push(index.byCause[coding.causeOf(cause) ?? -1]);
  return lists.includes(undefined) ? null : lists.filter((list) => list !== undefined);
}

/** Attempts by node of the path and flat value of a fix, `[depth * fix values + flat - first]`, counted beforehand. */
function attemptsOnPath(index: RecordIndex, path: readonly number[]): Int32Array {
  const { count } = fixValues(index.layout);
  const results = new Int32Array(path.length * count);
  path.forEach((node, depth) => {
    results.set(index.attempts.subarray(node * count, (node + 1) * count), depth * count);
  });
  return results;
}

/** The same over the rows that are in all lists. */
function attemptsInScope(index: RecordIndex, lists: readonly PostingList[], path: readonly number[]): Int32Array {
  const { first, count } = fixValues(index.layout);
  const results = new Int32Array(path.length * count);
  const depths = sharedDepths(index, path);
  const met = intersectLists(lists, index);
  const { rows } = index.scratch;
  for (let i = 0; i < met; i += 1) {
    const row = rows[i] as number;
    if (!isLive(index, row)) continue;
    const depth = depths[index.device[row] as number] as number;
    forEachAttempt(index, row, first, (flat) => {
      for (let at = flat - first, level = 0; level < depth; level += 1, at += count) results[at] = (results[at] as number) + 1;
    });
  }
  return results;
}

/** How many nodes from the root each device shares with the path. */
function sharedDepths({ layout }: RecordIndex, path: readonly number[]): Uint8Array {
  const depths = new Uint8Array(layout.deviceParents.length);
  depths[0] = 1;
  for (let node = 1; node < depths.length; node += 1) {
    const above = depths[layout.deviceParents[node] as number] as number;
    depths[node] = path[above] === node ? above + 1 : above;
  }
  return depths;
}

/** Tries and results of every fix that was tried at all, along the path. */
function tallies({ layout }: RecordIndex, results: Int32Array): { fix: number; path: Tally[] }[] {
  const { first, count } = fixValues(layout);
  return Array.from(layout.kinds.keys())
    .filter((fix) => (layout.valueStarts[fix] as number) >= first)
    .map((fix) => ({
      fix,
      path: Array.from({ length: results.length / count }, (_, depth) => {
        const tally: Tally = { tries: 0, cures: 0, partial: 0, noChange: 0, madeWorse: 0, cameBack: 0 };
        FIX_RESULTS.forEach((result, value) => {
          const n = results[depth * count + (layout.valueStarts[fix] as number) - first + value] as number;
          const key = KEYS[result];
          tally.tries += n;
          if (key !== null) tally[key] += n;
        });
        return tally;
      }),
    }))
    .filter(({ path }) => (path[0]?.tries ?? 0) > 0);
}
