import type { Unit } from '../../schemas/terms';
import type { NumberRule } from '../../schemas/vocabulary';
import { outcomeOfOverload, outcomeOfReading } from '../readings/outcome-of-reading';
import { parseReadingAt } from '../readings/parse-reading';
import { quantityOf } from '../readings/units';

/** A number as typed beside a check; `outcome` is what the check's rule makes of it, `reason` why it cannot be read. */
export type TypedNumber = { value: number | null; unit: Unit | null; outcome: string | null; reason: string | null };

const NOTHING: TypedNumber = { value: null, unit: null, outcome: null, reason: null };
const refuse = (reason: string): TypedNumber => ({ ...NOTHING, reason });

/** Reads `4.62 V`, `680mV`, `4k7` or `OL`. A bare number has the unit of the check's rule, where it has one. */
export function readNumber(typed: string, rule: NumberRule | null): TypedNumber {
  const text = typed.trim();
  if (text === '') return NOTHING;
  const read = parseReadingAt(text, 0);
  if (read === null || read.end !== text.length) {
    return refuse(`"${text}" cannot be read. Write a number with its unit, such as 4.62 V.`);
  }
  if (read.overload) {
    const outcome = outcomeOfOverload({ rule });
    return outcome === null
      ? refuse('This check has no meaning for an overload. Choose the outcome, and leave this empty.')
      : { ...NOTHING, outcome };
  }
  const { value, resolution } = read;
  const unit = read.unit ?? rule?.unit ?? null;
  if (value === null || !Number.isFinite(value)) return refuse('Write a number with its unit, such as 4.62 V.');
  if (unit === null) return refuse('Write the unit, too, such as V, kOhm or MHz.');
  if (rule !== null && quantityOf(unit) !== quantityOf(rule.unit)) {
    return refuse(`This check is read in ${rule.unit}, and ${unit} measures something else.`);
  }
  return { value, unit, outcome: outcomeOfReading({ rule }, { value, unit, resolution }), reason: null };
}
