import Database from 'better-sqlite3';
import { NO_CAUSE, type RecordIndex, readRow } from '../../../shared/stats/record-index';

/**
 * The same records in normalised tables of whole numbers, with the index that each question wants: what somebody would
 * ask who keeps cases in SQLite alone. `log_length` is the logarithm of the number of findings; `finding` is ordered by value, `finding_of_case` by record.
 */
export function fillTables(file: string, index: RecordIndex, onProgress: (done: number) => void): Database.Database {
  const db = new Database(file);
  db.exec(`
    PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA cache_size = -262144;
    CREATE TABLE record (id INTEGER PRIMARY KEY, device INTEGER NOT NULL, month INTEGER NOT NULL, cause INTEGER, proof INTEGER NOT NULL, log_length REAL NOT NULL);
    CREATE TABLE finding_of_case (case_id INTEGER NOT NULL, position INTEGER NOT NULL, value INTEGER NOT NULL, PRIMARY KEY (case_id, position)) WITHOUT ROWID;
    CREATE TABLE finding (value INTEGER NOT NULL, case_id INTEGER NOT NULL, PRIMARY KEY (value, case_id)) WITHOUT ROWID;
  `);
  const record = db.prepare('INSERT INTO record VALUES (?, ?, ?, ?, ?, ?)');
  const finding = db.prepare('INSERT INTO finding_of_case VALUES (?, ?, ?)');
  const fill = db.transaction((from: number, to: number) => {
    for (let row = from; row < to; row += 1) {
      const { device, month, proof, findings } = readRow(index, row);
      const cause = index.firstCause[row] as number;
      record.run(row, device, month, cause === NO_CAUSE ? null : cause, proof, Math.log(findings.length || 1));
      findings.forEach(({ flat }, position) => finding.run(row, position, flat));
    }
  });
  for (let row = 0; row < index.rows; row += 50_000) {
    fill(row, Math.min(index.rows, row + 50_000));
    onProgress(Math.min(index.rows, row + 50_000));
  }
  db.exec('INSERT OR IGNORE INTO finding SELECT value, case_id FROM finding_of_case ORDER BY value, case_id; ANALYZE;');
  return db;
}
