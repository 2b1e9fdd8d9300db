import type { Check } from '../../shared/schemas/vocabulary';
import type { Unit } from '../../shared/schemas/terms';
import { pick } from '../random';
import type { Random } from '../world';

export type Measured = { readonly value: number; readonly unit: Unit };

type Band = NonNullable<Check['rule']>['bands'][number];

/**
 * A number that a check's rule turns into the given outcome; null where the check has no rule or none of its bands has
 * that outcome. Values gather around the middle of a band, near its inner end where the band is open.
 */
export function measuredValue(random: Random, check: Check, outcome: string): Measured | null {
  const bands = check.rule?.bands.filter((band) => band.outcome === outcome) ?? [];
  if (!check.rule || bands.length === 0) return null;
  const band = pick(random, bands);
  const drawn = valueInBand(random, band);
  const value = Number(drawn.toFixed(decimals(drawn)));
  return inBand(value, band) ? { value, unit: check.rule.unit } : null;
}

function valueInBand(random: Random, { min, max }: Band): number {
  const middling = (random() + random() + random()) / 3;
  if (min === null) return (max ?? 0) * random() * random() * 0.9;
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
