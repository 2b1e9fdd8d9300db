import { FIX_RESULTS, type FixResult } from '../../../shared/schemas/case';
import type { Fix } from '../../../shared/schemas/vocabulary';

/** Chance that what is put in is good: an old donor part, a new part, nothing put in at all. */
const DONOR_GOOD = 0.86;
const NEW_PART_GOOD = 0.98;
/** Chance that the work itself succeeds, by stage. */
const WORK_GOOD = [0.99, 0.97, 0.97, 0.96, 0.94] as const;
/** A unit without a fault works again after whatever was done; a faulty one may seem to. */
const LUCK_WITHOUT_FAULT = 0.22;
const LUCK = 0.004;

const partGood = (fix: Fix): number =>
  (fix.needs.includes('donor') ? DONOR_GOOD : 1) * (fix.needs.includes('new-part') ? NEW_PART_GOOD : 1);

/**
 * P(result | cause, fix) in the order of FIX_RESULTS. First, whatever the cause, the fix makes things worse or
 * changes the symptom (small chances by the fix's risk). Otherwise a fix that addresses the cause cures it if
 * donor, part and work are good, and sometimes only partly; any other changes nothing, save for rare luck.
 */
export function fixResults(fix: Fix, cause: string): Float64Array {
  const worse = 0.003 + 0.006 * fix.risk;
  const changed = 0.012 + 0.004 * fix.risk;
  const rest = 1 - worse - changed;
  const addressed = fix.addresses.includes(cause);
  const partly = addressed ? 0.035 : 0.003;
  const cured = addressed
    ? (1 - partly) * partGood(fix) * WORK_GOOD[fix.stage]
    : cause === 'no-fault-found'
      ? LUCK_WITHOUT_FAULT
      : LUCK;
  const chances: Record<FixResult, number> = {
    'no-change': rest * (1 - partly - cured),
    'symptom-changed': changed,
    partly: rest * partly,
    cured: rest * cured,
    'made-worse': worse,
  };
  return Float64Array.from(FIX_RESULTS, (result) => chances[result]);
}
