import type { Check } from '../../shared/schemas/vocabulary';
import type { Unit } from '../../shared/schemas/terms';
import { hashText, pick, seededRandom } from '../random';
import type { Random } from '../world';

export type Measured = { readonly value: number; readonly unit: Unit };

type Band = NonNullable<Check['rule']>['bands'][number];

/**
 * A number that a check's rule turns into the given outcome; null where the check has no rule or none of its bands has
 * that outcome. Frequencies belong to the board and hardly differ between units; other values gather around the middle of
 * a band, near its inner end where the band is open.
 */
export function measuredValue(
  random: Random,
  { check, board }: { check: Check; board: string },
  outcome: string,
): Measured | null {
  const bands = check.rule?.bands.filter((band) => band.outcome === outcome) ?? [];
  if (!check.rule || bands.length === 0) return null;
  const band = pick(random, bands);
  const nominal = check.rule.unit === 'MHz' && outcome === check.workingOutcome ? boardFrequency(board, check.slug) : null;
  const drawn = nominal !== null && inBand(nominal, band) ? nominal * (1 + 0.002 * (random() - 0.5)) : valueInBand(random, band);
  const value = Number(drawn.toFixed(decimals(drawn)));
  return inBand(value, band) ? { value, unit: check.rule.unit } : null;
}

/** Clocks of the time, in MHz; one per board and check. */
const FREQUENCIES = [1, 1.79, 2, 3, 3.5, 3.58, 4, 4.43, 6, 7.16, 8] as const;

function boardFrequency(board: string, check: string): number {
  return pick(seededRandom(hashText(`${board} ${check} frequency`)), FREQUENCIES);
}

function valueInBand(random: Random, { min, max }: Band): number {
  const middling = (random() + random() + random()) / 3;
  if (min === null) return (max ?? 0) * (0.03 + 0.85 * random() * random());
  if (max === null) return min * (1.001 + 0.3 * random() * random());
  const wide = min > 0 && max / min > 8;
  return wide ? min * (max / min) ** (0.35 + 0.5 * middling) : min + (max - min) * middling;
}

const inBand = (value: number, { min, max }: Band): boolean => (min === null || value >= min) && (max === null || value < max);

/** As a bench meter shows it: three to four figures. */
function decimals(value: number): number {
  if (value >= 100) return 0;
  return value >= 20 ? 1 : value >= 0.1 ? 2 : 3;
}
