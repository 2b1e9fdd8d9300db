import { FIX_RESULTS } from '../../schemas/case';
import type { FixRecord, Named } from '../../schemas/counted-share';
import { forEachBit, hasBit } from '../../stats/bit-set';
import { type FixCounts, fixSuccess } from '../../stats/decide/fix-success';
import { forEachAttempt } from '../../stats/record-words';
import type { CaseRows } from './case-scope';
import type { CasebookModel } from './casebook-model';

/**
 * Tries and results of one fix over these cases, under the name given. Fixes done together count as one try of each. The
 * interval is Jeffreys', of these tries alone: nothing is borrowed.
 */
export function recordOfFix(model: CasebookModel, fix: string, rows: CaseRows, name: Named): FixRecord {
  const { tries, cures, partial, noChange, madeWorse, cameBack, pooledLow, pooledHigh, estimate } = fixSuccess([
    countFix(model, model.coding.observableOf('fix', fix), rows),
  ]);
  return { ...name, tried: tries, resolved: cures, partly: partial, noChange, madeWorse, cameBack, low: pooledLow, high: pooledHigh, estimate };
}

function countFix(model: CasebookModel, fix: number | undefined, rows: CaseRows): FixCounts {
  const results = FIX_RESULTS.map(() => 0);
  const start = model.index.layout.valueStarts[fix ?? -1];
  if (start !== undefined) {
    forEachBit(rows, (row) => {
      forEachAttempt(model.index, row, start, (flat) => {
        if (flat - start < results.length) results[flat - start] = (results[flat - start] ?? 0) + 1;
      });
    });
  }
  const of = (result: (typeof FIX_RESULTS)[number]) => results[FIX_RESULTS.indexOf(result)] ?? 0;
  const cameBack = [...model.cameBack.values()].filter((c) => fix !== undefined && c.fixes.includes(fix) && hasBit(rows, c.row)).length;
  return {
    tries: results.reduce((sum, n) => sum + n, 0),
    cures: of('cured') - cameBack,
    partial: of('partly'),
    noChange: of('no-change'),
    madeWorse: of('made-worse'),
    cameBack,
  };
}
