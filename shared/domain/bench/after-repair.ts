import type { BenchEntry } from '../../schemas/bench';
import type { Check } from '../../schemas/vocabulary';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { bodiesOf } from './bench-log';

/** Before power goes on again, and right after. Common practice, no source. */
const ALWAYS = ['rails-short-test', 'rail-5v', 'rail-12v'];

/**
 * Checks that prove a repair, in the order in which they are done: no short on the rails before power, the voltages, what
 * had shown the fault, and the checks of the role that the fix was about. Only such as the board can be put to.
 * Common practice, no source.
 * @param entries those that stand, in order
 */
export function afterRepairChecks(words: VocabularyWords, device: string, entries: readonly BenchEntry[]): Check[] {
  const place = words.devices.get(device);
  const boards = place ? (place.board ? [place.board] : place.model.boards) : [];
  const possible = (check: Check) =>
    place === undefined ||
    (check.categories.includes(place.model.category) && boards.some((board) => !board.impossibleChecks.includes(check.slug)));
  const failed = bodiesOf(entries, 'check')
    .filter(({ check, outcome }) => words.checks.get(check)?.workingOutcome !== outcome)
    .map(({ check }) => check);
  const fixes = bodiesOf(entries, 'fix').flatMap(({ fixes: done }) => done.map(({ fix }) => fix));
  const roles = new Set(fixes.map((fix) => words.fixes.get(fix)?.role));
  const ofRole = [...words.checks.values()].filter((check) => roles.has(check.targetRole)).map((check) => check.slug);
  const wanted = [...new Set([...ALWAYS, ...failed, ...ofRole])];
  return wanted.flatMap((slug) => words.checks.get(slug) ?? []).filter(possible);
}

/** Minutes that a unit should run before it is called repaired. Common practice, no source. */
export const SOAK_MINUTES = 60;
