import type { Unit } from '../../schemas/terms';
import type { Check, NumberRule } from '../../schemas/vocabulary';
import { convertUnit } from './units';

/**
 * The outcome that a numeric reading means for a check, by the check's own stated rule.
 *
 * `value` in `unit`; a null `unit` takes the rule's unit. Bands are half-open [min, max). A reading stands for
 * what it was rounded from (`resolution`: value of its last digit), so a band that lies wholly inside that is met.
 * Returns null where the check has no rule, the unit measures something else, or no band covers the value.
 */
export function outcomeOfReading(
  check: Pick<Check, 'rule'>,
  reading: { value: number; unit: Unit | null; resolution?: number },
): string | null {
  const rule = check.rule;
  if (rule === null || !Number.isFinite(reading.value)) return null;
  const inRuleUnit = (value: number) => (reading.unit === null ? value : convertUnit(value, reading.unit, rule.unit));
  const value = inRuleUnit(reading.value);
  if (value === null) return null;
  const half = (reading.resolution ?? 0) / 2;
  return (
    bandWithin(rule, inRuleUnit(reading.value - half) ?? value, inRuleUnit(reading.value + half) ?? value) ?? bandOf(rule, value)
  );
}

/** A band narrower than the reading is written: "3.58 MHz" cannot miss 3.5795 MHz plus or minus 400 Hz. */
function bandWithin(rule: NumberRule, low: number, high: number): string | null {
  const band = rule.bands.find((b) => b.min !== null && b.max !== null && b.min >= low && b.max <= high);
  return band?.outcome ?? null;
}

/** What a meter showing OL means for a check; null where its rule does not say. */
export function outcomeOfOverload(check: Pick<Check, 'rule'>): string | null {
  return check.rule?.overload ?? null;
}

function bandOf(rule: NumberRule, value: number): string | null {
  const band = rule.bands.find((b) => (b.min === null || value >= b.min) && (b.max === null || value < b.max));
  return band?.outcome ?? null;
}
