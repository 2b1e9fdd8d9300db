import { FIX_RESULTS } from '../../schemas/case';
import type { Fix } from '../../schemas/vocabulary';
import { fixValues, readRow } from '../../stats/record-index';
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
  const { revision } = model.counts;
  const kept = known.get(model);
  if (kept?.revision === revision) return kept.chances;
  const chances = countCures(model);
  known.set(model, { revision, chances });
  return chances;
}

/** Chances stay as they are until another case counts. */
const known = new WeakMap<CasebookModel, { revision: number; chances: (fix: Fix) => Float64Array }>();

function countCures(model: CasebookModel): (fix: Fix) => Float64Array {
  const { coding } = model;
  const cells = new Map<string, Tally>();
  const byFix = new Map<string, Tally>();
  const all: Tally = { tries: 0, cures: 0 };
  for (const fix of model.words.fixes.values()) {
    for (const cause of fix.addresses) {
      const counted = triesOn(model, fix.slug, cause);
      if (counted.tries === 0) continue;
      const tallies = [tallyOf(cells, `${fix.slug} ${cause}`), tallyOf(byFix, fix.slug), all];
      for (const tally of tallies) {
        tally.tries += counted.tries;
        tally.cures += counted.cures;
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

/** Tries of a fix, and cures by it that lasted as far as is known, on records with this one cause. */
function triesOn({ coding, index, cameBack }: CasebookModel, fixSlug: string, causeSlug: string): Tally {
  const fix = coding.observableOf('fix', fixSlug);
  const cause = coding.causeOf(causeSlug);
  const tally: Tally = { tries: 0, cures: 0 };
  if (fix === undefined || cause === undefined) return tally;
  const { first } = fixValues(index.layout);
  FIX_RESULTS.forEach((_, result) => {
    const flat = (index.layout.valueStarts[fix] as number) + result;
    const n = index.attemptsByCause[(flat - first) * index.layout.causeCount + cause] as number;
    tally.tries += n;
    if (result === CURED) tally.cures += n;
  });
  for (const { row, fixes } of cameBack.values()) {
    const { causes } = readRow(index, row);
    if (fixes.includes(fix) && causes.length === 1 && causes[0] === cause) tally.cures -= 1;
  }
  return tally;
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
