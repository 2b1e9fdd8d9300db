import { FIX_RESULTS } from '../../schemas/case';
import type { Fix } from '../../schemas/vocabulary';
import type { CasebookModel } from '../casebook/casebook-model';

/** Tries that the pooled share is worth: of all fixes for one fix, of one fix for one cause. */
const BORROWED_TRIES = 4;
const CURED = FIX_RESULTS.indexOf('cured');

type Tally = { tries: number; cures: number };

/**
 * Chance that a fix cures each cause, one entry per cause, the unlisted one last; 0 where it does not address the
 * cause. Counted over records with one cause in which a fix that addresses that cause was tried: a try that changed
 * nothing there was a bad part or bad work. Shrunk toward the fix's own share over its causes, and that toward the
 * share of all fixes, each worth four tries; that one starts at Beta(1/2, 1/2).
 */
export function cureChances(model: CasebookModel): (fix: Fix) => Float64Array {
  const { coding } = model;
  const cells = new Map<string, Tally>();
  const byFix = new Map<string, Tally>();
  const all: Tally = { tries: 0, cures: 0 };
  for (const entry of model.entries.values()) {
    const cause = entry.causes.length === 1 ? entry.causes[0]?.cause : undefined;
    if (cause === undefined) continue;
    for (const attempt of entry.attempts) {
      for (const observable of attempt.fixes) {
        const slug = coding.observables[observable]?.id ?? '';
        if (!model.words.fixes.get(slug)?.addresses.includes(cause)) continue;
        const tallies = [tallyOf(cells, `${slug} ${cause}`), tallyOf(byFix, slug), all];
        for (const tally of tallies) {
          tally.tries += 1;
          if (attempt.result === CURED) tally.cures += 1;
        }
      }
    }
  }
  const overall = (all.cures + 0.5) / (all.tries + 1);
  return (fix) => {
    const ofFix = shrunk(byFix.get(fix.slug), overall);
    const cure = new Float64Array(coding.causes.length + 1);
    for (const slug of fix.addresses) {
      const cause = coding.causeOf(slug);
      if (cause !== undefined) cure[cause] = shrunk(cells.get(`${fix.slug} ${slug}`), ofFix);
    }
    return cure;
  };
}

function tallyOf(tallies: Map<string, Tally>, key: string): Tally {
  let tally = tallies.get(key);
  if (!tally) {
    tally = { tries: 0, cures: 0 };
    tallies.set(key, tally);
  }
  return tally;
}

function shrunk(tally: Tally | undefined, toward: number): number {
  const { tries, cures } = tally ?? { tries: 0, cures: 0 };
  return (cures + BORROWED_TRIES * toward) / (tries + BORROWED_TRIES);
}
