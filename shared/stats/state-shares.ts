import { COUNT_UNIT, type Counts, valueTotal } from './counts';
import type { StateSettings } from './settings';
import { readCells } from './sparse-rows';

/** Records of units in one state: of the cause, and of all causes that the observable is not about; with the value, and in all. */
export type StateCount = { own: number; ownTotal: number; off: number; offTotal: number };

/** Pulls the share over all causes in a state towards the share over all states. */
const STATE_PULL = 6;

/** What was counted of one value of an observable under a cause in a state; null for the unlisted cause, which has no records. */
export function stateCountOf(
  counts: Counts,
  { state, cause, observable, value }: { state: number; cause: number | null; observable: number; value: number },
): StateCount {
  const { layout } = counts;
  const first = layout.valueStarts[observable] as number;
  const end = layout.valueStarts[observable + 1] as number;
  const row = cause === null ? undefined : counts.stateRows.get(state * layout.causeCount + cause);
  const counted = new Float64Array(end - first);
  if (row !== undefined) readCells(counts.rows, row, { first, end, into: counted, sign: 1 });
  const offset = state * valueTotal(layout);
  const found = { own: 0, ownTotal: 0, off: 0, offTotal: 0 };
  for (let flat = first; flat < end; flat += 1) {
    const own = (counted[flat - first] as number) / COUNT_UNIT;
    const off = (counts.stateOffValues[offset + flat] as number) / COUNT_UNIT;
    found.ownTotal += own;
    found.offTotal += off;
    if (flat === first + value) Object.assign(found, { own, off });
  }
  return found;
}

/**
 * P(v | cause, state) from P(v | cause) and what was counted in the state. A unit without power shows a dead rail whatever the
 * cause: so a cause that the observable is not about leans on all such causes in the state, the more the less is known of
 * it, and then its own records in the state count. `worth` is how many records the share over all states is worth.
 */
export function shareInState(
  { share, worth }: { share: number; worth: number },
  counted: StateCount,
  { on, offShare, settings }: { on: boolean; offShare: number; settings: StateSettings },
): { share: number; worth: number } {
  const all = (counted.off + STATE_PULL * offShare) / (counted.offTotal + STATE_PULL);
  const lean = on ? 0 : settings.lean;
  const before = (worth * share + lean * all) / (worth + lean);
  const limit = on ? settings.onTarget : settings.offTarget;
  return {
    share: (counted.own + limit * before) / (counted.ownTotal + limit),
    worth: counted.ownTotal + 1 / (1 / limit + 1 / (worth + lean)),
  };
}
