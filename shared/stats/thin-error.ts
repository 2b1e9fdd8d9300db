import type { Counts } from './counts';
import { SYMPTOM } from './layout';
import type { CodedFinding } from './layout';
import type { ModelError } from './settings';

/** Records on a device at which it speaks half for itself. */
const HALF_KNOWN = 50;
/** Checks and fixes that add as much as there was before the first of them. */
const STEPS_THAT_DOUBLE = 3;

/**
 * Variance of the log odds, in nats squared, by which an estimate may be off because its casebook is thin, beyond what the shares'
 * own spread says. What causes and boards have in common is itself learned from few records then, and every share leans on
 * it: all are off together, which no cause's own records can tell. It falls with the records on the device and with the records
 * per cause in all, and grows with each check and fix, since what they show is counted least often.
 */
export function thinError(
  counts: Counts,
  { device, findings, modelError: { thinDevice, thinCasebook } }: { device: number; findings: readonly CodedFinding[]; modelError: ModelError },
): number {
  const { layout, causeRecords, records } = counts;
  let causes = 0;
  let resolved = 0;
  for (let cause = 0; cause < layout.causeCount; cause += 1) {
    const n = causeRecords[cause] as number;
    resolved += n;
    if (n > 0) causes += 1;
  }
  if (resolved === 0 || findings.length === 0) return 0;
  const steps = findings.filter(({ observable }) => layout.kinds[observable] !== SYMPTOM).length;
  const onDevice = HALF_KNOWN / (HALF_KNOWN + (records[device] as number));
  return (thinDevice * onDevice + (thinCasebook * causes) / resolved) * (1 + steps / STEPS_THAT_DOUBLE);
}
