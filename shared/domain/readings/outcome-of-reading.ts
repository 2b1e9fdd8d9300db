import type { Unit } from '../../schemas/terms';
import type { Check, NumberRule } from '../../schemas/vocabulary';
import { convertUnit } from './units';

/**
 * The outcome that a numeric reading means for a check, by the check's own stated rule.
 *
 * `value` in `unit`; a null `unit` takes the rule's unit. Bands are half-open [min, max).
 * Returns null where the check has no rule, the unit measures something else, or no band covers the value.
 */
export function outcomeOfReading(check: Pick<Check, 'rule'>, value: number, unit: Unit | null): string | null {
  const rule = check.rule;
  if (rule === null || !Number.isFinite(value)) return null;
  const inRuleUnit = unit === null ? value : convertUnit(value, unit, rule.unit);
  if (inRuleUnit === null) return null;
  return bandOf(rule, inRuleUnit);
}

/** What a meter showing OL means for a check; null where its rule does not say. */
export function outcomeOfOverload(check: Pick<Check, 'rule'>): string | null {
  return check.rule?.overload ?? null;
}

function bandOf(rule: NumberRule, value: number): string | null {
  const band = rule.bands.find((b) => (b.min === null || value >= b.min) && (b.max === null || value < b.max));
  return band?.outcome ?? null;
}
