import type { Counts } from './counts';
import { devicePath } from './findings';
import type { Settings } from './settings';

/**
 * Probability, before anything is seen, that the next unit of a device has a cause that is on no record of the
 * casebook: Good and Turing's share of singletons, on whole records. At the root half a singleton is added, so that it
 * is never 0 or 1; below, the parent's share counts as `unlistedConcentration` records of the device's own. A cause on
 * a single record counts as a singleton wherever on the path that record lies.
 * Source: I. J. Good, Biometrika 40 (1953), 237-264. Returns 0 where the settings rule unlisted causes out.
 */
export function unlistedShare(counts: Counts, settings: Settings, device: number): number {
  if (!settings.unlisted) return 0;
  const C = counts.layout.causeCount;
  const singletons: number[] = [];
  for (let c = 0; c < C; c += 1) if (counts.causeRecords[c] === 1) singletons.push(c);
  let share = 0;
  for (const node of devicePath(counts.layout, device)) {
    const resolved = (counts.records[node] as number) - (counts.unresolved[node] as number);
    const single = singletons.filter((c) => (counts.causeRecords[node * C + c] as number) > 0).length;
    if (node === 0) share = (single + 0.5) / (resolved + 1);
    else {
      const pooled = (single + settings.unlistedConcentration * share) / (resolved + settings.unlistedConcentration);
      // The parent's share knows these records already, so on their own they bring it down to their own bound only.
      share = Math.max(pooled, Math.min(share, (single + 0.5) / (resolved + 1)));
    }
  }
  return Math.min(share, 0.999);
}
