import { type JudgedPin, type KnownPart, stateCounts } from '../../../../shared/domain/readings/judge-part';
import type { BoardPart } from '../../../../shared/schemas/device';
import { LOGIC_STATES } from '../../../../shared/schemas/terms';

/** At most four figures: what a meter on a bench shows. */
export function shortNumber(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/** What working units show at a pin: `pulsing 18 of 20, high 2 of 20; 4.98 to 5.06 V`. */
export function usualWords(part: BoardPart, known: KnownPart, pin: string): string {
  const at = known.working?.pins.find((p) => p.pin === pin) ?? null;
  const counts = stateCounts(part, at);
  const all = counts.reduce((sum, n) => sum + n, 0);
  const states = [...counts.entries()]
    .filter(([, n]) => n > 0)
    .sort((a, b) => b[1] - a[1])
    .map(([i, n]) => `${LOGIC_STATES[i]} ${n} of ${all}`);
  const numbers = (at?.numbers ?? []).flatMap(({ unit, usual }) =>
    usual ? [`${shortNumber(usual.low)} to ${shortNumber(usual.high)} ${unit} (${usual.readings} readings)`] : [],
  );
  const words = [...states, ...numbers];
  return words.length === 0 ? 'No working unit was read here.' : `Working units: ${words.join(', ')}`;
}

/** Why a pin is marked as it is, in one sentence. */
export function verdictReason(judged: JudgedPin): string {
  const parts: string[] = [];
  if (judged.of > 0) parts.push(`${judged.same} of ${judged.of} working units show this`);
  if (judged.interval) {
    const { low, high, unit, readings } = judged.interval;
    parts.push(`working units ${shortNumber(low)} to ${shortNumber(high)} ${unit}, ${readings} readings`);
  }
  if (judged.published) parts.push(`${judged.published.within ? 'within' : 'outside'} ${judged.published.words}`);
  return parts.length === 0 ? 'no working unit was read here' : parts.join('; ');
}
