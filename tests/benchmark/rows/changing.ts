import { codedRecord } from '../../../shared/domain/casebook/case-entry';
import { addCase, type CasebookModel, retractCase } from '../../../shared/domain/casebook/casebook-model';
import { addRecord, createCounts } from '../../../shared/stats/counts';
import { fitSettings } from '../../../shared/stats/fit-settings';
import type { CodedRecord } from '../../../shared/stats/layout';
import { liveRows } from '../../../shared/stats/record-index';
import { fasterRow, ms, type Row, timed, timesOf } from '../run/measure';
import { drawCases } from '../world/draw';

/** Cases that the fit looks at where it is timed whole: fewer than a real fit does, so that the target is harder. */
const SAMPLE = 300;
/** With more cases than these only the first part of a refit is timed. */
const MOST_FITTED = 10_000;

/**
 * One case added, and one taken back, beside fitting the settings anew: whole for a small casebook; for a large one only the counting
 * of every case, with which each refit begins. That is less than a refit, so ours is at most the share that the row says.
 */
export function changeRow(model: CasebookModel, rounds: number): Row {
  const cases = [...drawCases(77, rounds)];
  const adding = cases.map((record) => timed(() => addCase(model, record)));
  const retracting = cases.map(({ id }) => timed(() => retractCase(model, id)));
  const rows = [...liveRows(model.index)];
  const { layout } = model.coding;
  const at = (i: number) => codedRecord(model, rows[i] as number);
  const isWhole = rows.length <= MOST_FITTED;
  const refit = timed(() => (isWhole ? fitSettings(layout, { length: rows.length, at }, { maxRecords: SAMPLE }) : countAll(model, rows.length, at)));
  const ours = timesOf([...adding, ...retracting]);
  const ratio = refit / ours.median;
  const head = {
    id: 'change',
    work: `one case added or retracted, ${model.index.size.toLocaleString('en')} cases`,
    alternative: isWhole ? `a refit: every case counted, then the settings fitted on ${SAMPLE} of them` : 'the first part of a refit alone: every case counted',
  };
  const note = isWhole
    ? 'a refit on as many cases as it is made for looks at up to 1,500; timed once'
    : 'a lower bound: the fit that follows was not timed at this size';
  const row = fasterRow(head, { ours, theirs: { median: refit, p95: refit }, ratio }, { atLeast: 10_000, note });
  const share = `1/${Math.round(ratio).toLocaleString('en')} of it`;
  return { ...row, asked: 'at most 1/10,000 of a refit', theirs: ms(refit), ratioText: isWhole ? share : `at most ${share}` };
}

/** Counts so many records into empty counts, as a refit does. */
function countAll({ coding }: CasebookModel, length: number, at: (i: number) => CodedRecord): void {
  const counts = createCounts(coding.layout);
  for (let i = 0; i < length; i += 1) addRecord(counts, at(i));
}
