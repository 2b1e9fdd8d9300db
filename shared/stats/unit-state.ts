import type { CodedFinding, Layout } from './layout';

/** Value of a symptom that is there. */
const PRESENT = 1;

/** Number of states that a layout tells apart; 0 where it tells none. */
export function stateCount(layout: Layout): number {
  return layout.showsState === undefined ? 0 : layout.showsState.reduce((most, state) => Math.max(most, state), 0) + 1;
}

/**
 * The state a unit is in by its symptoms: the highest one that a present symptom shows; 0 (none of them) where a symptom of the
 * highest state is absent and no other is present; -1 where that is not known. Does not depend on the findings' order.
 */
export function unitState(layout: Layout, findings: readonly CodedFinding[]): number {
  const { showsState } = layout;
  if (showsState === undefined) return -1;
  let shown = 0;
  let denied = 0;
  for (const { observable, value } of findings) {
    const state = showsState[observable] as number;
    if (state === 0) continue;
    if (value === PRESENT) shown = Math.max(shown, state);
    else denied = Math.max(denied, state);
  }
  if (shown > 0) return shown;
  return denied > 0 && denied === stateCount(layout) - 1 ? 0 : -1;
}
