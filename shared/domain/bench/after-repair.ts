import type { BenchEntry } from '../../schemas/bench';
import type { Check } from '../../schemas/vocabulary';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { bodiesOf } from './bench-log';

/** Before power goes on again, and right after. Common practice, no source. */
const ALWAYS = ['rails-short-test', 'rail-5v', 'rail-12v'];
/** Where signals and media come in and go out. */
const INPUTS_OUTPUTS: ReadonlySet<string> = new Set([
  'controller-port',
  'keyboard',
  'button-pad',
  'coin-switch',
  'cartridge-connector',
  'edge-connector',
  'expansion-connector',
  'tape-interface',
  'video-connector',
  'rf-modulator',
  'video-encoder',
  'lcd-panel',
  'amplifier',
  'speaker',
  'headphone-jack',
]);
/** The list stays short enough to be done. */
const MOST = 14;

/**
 * Checks that prove a repair, in the order in which they are done: no short on the rails before power, the voltages, what
 * had shown the fault, the checks of the role that the fix was about, then every input and output that can be tried
 * without an iron. Only such as the board can be put to; at most fourteen.
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
  const inOut = [...words.checks.values()]
    .filter((check) => INPUTS_OUTPUTS.has(check.targetRole) && check.stage <= 2)
    .map((check) => check.slug);
  const wanted = [...new Set([...ALWAYS, ...failed, ...ofRole, ...inOut])];
  return wanted
    .flatMap((slug) => words.checks.get(slug) ?? [])
    .filter(possible)
    .slice(0, MOST);
}

/** Minutes that a unit should run before it is called repaired. Common practice, no source. */
export const SOAK_MINUTES = 60;
