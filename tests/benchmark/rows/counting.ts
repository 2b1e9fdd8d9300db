import type Database from 'better-sqlite3';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { CodedFinding } from '../../../shared/stats/layout';
import { countMatching } from '../../../shared/stats/matching-counts';
import { rankSimilar } from '../../../shared/stats/rank-similar';
import { type RecordIndex, readRow } from '../../../shared/stats/record-index';
import { fasterRow, paired, type Row } from '../run/measure';
import { randomOf } from '../world/draw';

/** What a contradiction costs in `rankSimilar`, for the statement to ask for the very same. */
const CONTRADICTION_COST = 0.7;

/** Findings of drawn records: so many of each, or all. */
function questionsOf(index: RecordIndex, { seed, count, findings }: { seed: number; count: number; findings: number | null }): CodedFinding[][] {
  const random = randomOf(seed);
  const questions: CodedFinding[][] = [];
  while (questions.length < count) {
    const flats = [...new Set(readRow(index, Math.floor(random() * index.rows)).findings.map((f) => f.flat))];
    if (findings !== null && flats.length < findings) continue;
    const chosen = flats
      .map((flat) => ({ flat, at: random() }))
      .sort((a, b) => a.at - b.at)
      .slice(0, findings ?? flats.length);
    questions.push(chosen.map(({ flat }) => findingOf(index, flat)));
  }
  return questions;
}

function findingOf(index: RecordIndex, flat: number): CodedFinding {
  const observable = index.observables[flat] as number;
  return { observable, value: flat - (index.layout.valueStarts[observable] as number) };
}

const flatOf = (index: RecordIndex, { observable, value }: CodedFinding) => (index.layout.valueStarts[observable] as number) + value;

/** Matching counts by cause beside a join over the table ordered by value, the rarest finding first. */
export function matchingRow({ index }: CasebookModel, db: Database.Database, rounds: number): Row {
  const join = db.prepare(`
    SELECT r.cause, count(*) FROM finding a CROSS JOIN finding b ON b.value = ? AND b.case_id = a.case_id
    CROSS JOIN finding c ON c.value = ? AND c.case_id = a.case_id CROSS JOIN finding d ON d.value = ? AND d.case_id = a.case_id
    CROSS JOIN record r ON r.id = a.case_id WHERE a.value = ? GROUP BY r.cause`).raw();
  const questions = questionsOf(index, { seed: 11, count: rounds, findings: 4 });
  const ask = (findings: CodedFinding[]) => {
    const flats = findings.map((f) => flatOf(index, f)).sort((a, b) => (index.carrying[a] as number) - (index.carrying[b] as number));
    return join.all(flats[1], flats[2], flats[3], flats[0]) as [number | null, number][];
  };
  for (const question of questions) {
    const counted = countMatching(index, question).byCause;
    for (const [cause, n] of ask(question)) if (cause !== null && counted[cause] !== n) throw new Error('The two ways count differently.');
  }
  const head = { id: 'matching', work: `matching counts by cause, 4 findings, ${label(index)}`, alternative: 'best indexed SQL join in SQLite' };
  return fasterRow(head, paired(questions, (q) => countMatching(index, q), ask), { atLeast: 40 });
}

/** The most similar records beside one statement over the same tables. */
export function similarRow({ index }: CasebookModel, db: Database.Database, { rounds, findings }: { rounds: number; findings: number | null }): Row {
  const questions = questionsOf(index, { seed: 12, count: rounds, findings });
  const weightOf = (flat: number) => Math.log((index.size + 1) / ((index.carrying[flat] as number) + 0.5));
  const statements = new Map<number, Database.Statement>();
  const ask = (question: CodedFinding[]) => {
    const gains = question.flatMap(({ observable, value }) => {
      const start = index.layout.valueStarts[observable] as number;
      const weight = weightOf(start + value);
      return Array.from({ length: index.layout.valueCounts[observable] as number }, (_, v) => [start + v, v === value ? weight : -CONTRADICTION_COST * weight]);
    });
    let statement = statements.get(gains.length);
    if (statement === undefined) {
      statement = db.prepare(`
        WITH asked(value, gain) AS (VALUES ${gains.map(() => '(?, ?)').join(', ')})
        SELECT f.case_id, sum(asked.gain) AS score FROM asked CROSS JOIN finding f ON f.value = asked.value
        GROUP BY f.case_id HAVING max(asked.gain) > 0 ORDER BY score DESC LIMIT 20`);
      statements.set(gains.length, statement);
    }
    return statement.all(gains.flat()) as { case_id: number; score: number }[];
  };
  const rank = (question: CodedFinding[]) => rankSimilar(index, { device: null, findings: question }, { limit: 20 });
  for (const question of questions.slice(0, 10)) {
    const [ours, theirs] = [rank(question), ask(question)];
    ours.forEach(({ score }, i) => {
      if (Math.abs(score - (theirs[i]?.score ?? Number.NaN)) > 1e-6) throw new Error('The two ways rank differently.');
    });
  }
  const whole = findings === null;
  const head = {
    id: whole ? 'similar-whole' : 'similar',
    work: `top 20 similar by weighted findings, ${whole ? 'a whole case' : `${findings} findings`}, ${label(index)}`,
    alternative: 'one SQL statement over the normalised tables, paired query by query',
  };
  return fasterRow(head, paired(questions, rank, ask), { atLeast: whole ? 25 : 60 });
}

function label({ size }: RecordIndex): string {
  return size >= 1_000_000 ? `${size / 1_000_000}M` : `${size / 1_000}k`;
}
