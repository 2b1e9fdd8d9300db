// Run by the benchmark: `in-process.ts <cases> <rounds> <folder> <row ids, by commas>`; progress to stderr, rows as JSON to stdout.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { changeRow } from '../rows/changing';
import { matchingRows, similarAsShownRow, similarRow } from '../rows/counting';
import { lookUpRow } from '../rows/look-up';
import { memoryRow } from '../rows/memory';
import { posteriorRows } from '../rows/posterior';
import { searchRows } from '../rows/searching';
import { startRow, writeModel } from '../rows/starting';
import { drawnModel } from '../world/model';
import { fillTables } from '../world/tables';
import type { Row } from './measure';

const [, , count = '', rounds = '', folder = '', wanted = ''] = process.argv;
const cases = Number(count);
const times = Number(rounds);
const ids = new Set(wanted.split(','));
const say = (text: string) => process.stderr.write(`${new Date().toISOString().slice(11, 19)} ${count} cases: ${text}\n`);
const rows: Row[] = [];

if (['matching', 'similar', 'start', 'change', 'memory', 'look-up', 'posterior'].some((id) => ids.has(id))) {
  say('drawing');
  const model = drawnModel(1, cases, (done) => {
    if (done % 100_000 === 0) say(`${done} drawn`);
  });
  const snapshot = join(folder, `benchmark-${cases}.casebook`);
  const tables = join(folder, `benchmark-${cases}.db`);
  rmSync(tables, { force: true });
  const needsTables = ['matching', 'similar', 'start'].some((id) => ids.has(id));
  if (needsTables) say('filling the tables of the alternative');
  const db = needsTables ? fillTables(tables, model.index, (done) => say(`${done} in the tables`)) : null;
  if (db && ids.has('matching')) {
    say('matching counts');
    rows.push(...matchingRows(model, db, times));
  }
  if (db && ids.has('similar')) {
    say('similar cases');
    rows.push(similarRow(model, db, { rounds: times, findings: 5 }), similarRow(model, db, { rounds: Math.ceil(times / 2), findings: null }));
    rows.push(similarAsShownRow(model, db, Math.ceil(times / 2)));
  }
  if (ids.has('posterior')) {
    say('posterior');
    rows.push(...posteriorRows(model, times));
  }
  if (ids.has('look-up')) {
    say('look-up');
    rows.push(lookUpRow(model, times));
  }
  if (ids.has('start') || ids.has('memory')) await writeModel(snapshot, model);
  if (db && ids.has('start')) {
    say('start');
    rows.push(startRow(snapshot, db, 5));
  }
  db?.close();
  rmSync(tables, { force: true });
  if (ids.has('change')) {
    say('one change, and a refit');
    rows.push(changeRow(model, 100));
  }
  if (ids.has('memory')) {
    say('memory');
    rows.push(memoryRow(snapshot, cases));
  }
  rmSync(snapshot, { force: true });
}
if (ids.has('search')) rows.push(...(await searchRows(folder, cases, say)));
process.stdout.write(JSON.stringify(rows));
