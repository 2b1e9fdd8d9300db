import { FIX_RESULTS, type FixResult } from '../../shared/schemas/case';
import type { Fix } from '../../shared/schemas/vocabulary';
import type { FixModel } from './board-model';
import type { Way } from './compile-board';
import type { FixDescription } from './fault-model';

/** P(cured | addressed, part good) by action, where the model does not say otherwise. */
const CURES: Readonly<Record<Fix['action'], number>> = {
  replace: 0.975,
  reflow: 0.93,
  clean: 0.91,
  reseat: 0.86,
  adjust: 0.95,
  repair: 0.94,
  recap: 0.96,
  'swap-outside': 0.97,
  remove: 0.95,
};

/**
 * P(result | way of failing, part good or bad) of one fix. It cures mostly where it addresses the cause and the part
 * is good; elsewhere now and then by coincidence, more often where the fault comes and goes or is gone already.
 */
export function fixModel(fix: Fix, described: Partial<FixDescription>, ways: readonly Way[]): FixModel {
  const full: FixDescription = {
    cures: CURES[fix.action],
    badPart: fix.needs.includes('donor') ? 0.08 : fix.action === 'replace' ? 0.025 : 0.015,
    worse: 0.003 + 0.006 * fix.stage,
    ...described,
  };
  const good = new Float64Array(ways.length * FIX_RESULTS.length);
  const bad = new Float64Array(good.length);
  ways.forEach((way, index) => {
    const addressed = fix.addresses.includes(way.cause);
    good.set(inOrder(addressed ? helped(full, way) : unrelated(full, way)), index * FIX_RESULTS.length);
    bad.set(inOrder(addressed ? failedPart(full) : unrelated(full, way)), index * FIX_RESULTS.length);
  });
  return { badPart: full.badPart, good, bad };
}

type Named = Record<Exclude<FixResult, 'no-change'>, number>;

function helped({ cures, worse }: FixDescription, way: Way): Named {
  const cured = Math.min(cures, 0.98 - worse) * (way.intermittent ? 0.95 : 1);
  const left = 1 - cured - worse;
  return { cured, partly: left * 0.45, 'symptom-changed': left * 0.15, 'made-worse': worse };
}

/** The fix goes to the right place, with a part that is bad itself or work that was not done well. */
function failedPart({ worse }: FixDescription): Named {
  return { cured: 0.01, partly: 0.06, 'symptom-changed': 0.2, 'made-worse': worse + 0.04 };
}

function unrelated({ worse }: FixDescription, way: Way): Named {
  const cured = way.shown.states.has('works-now') ? 0.25 : way.intermittent ? 0.012 : 0.002;
  return { cured, partly: 0.008, 'symptom-changed': 0.02, 'made-worse': worse };
}

/** In the schema's order; what the named results leave of 1 is "no change". */
function inOrder(named: Named): number[] {
  const changed = Object.values(named).reduce((a, b) => a + b, 0);
  return FIX_RESULTS.map((result) => (result === 'no-change' ? 1 - changed : named[result]));
}
