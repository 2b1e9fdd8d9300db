import type Database from 'better-sqlite3';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import type { CodedFinding } from '../../../shared/stats/layout';
import { countMatching, matchingCounts } from '../../../shared/stats/matching-counts';
import { nearnessOfAll } from '../../../shared/stats/device-nearness';
import { rankSimilar } from '../../../shared/stats/rank-similar';
import { type RecordIndex, readRow } from '../../../shared/stats/record-index';
import { similarityTerms } from '../../../shared/stats/similarity-terms';
import { SIMILARITY_WEIGHTS } from '../../../shared/stats/similarity-weights';
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

type CauseCount = [cause: number | null, n: number];

/** Matching counts beside a join over the table ordered by value, the rarest finding first: by cause alone, then all that a look-up counts. */
export function matchingRows({ index }: CasebookModel, db: Database.Database, rounds: number): Row[] {
  const join = (columns: string) => db.prepare(`
    SELECT ${columns}, count(*) FROM finding a CROSS JOIN finding b ON b.value = ? AND b.case_id = a.case_id
    CROSS JOIN finding c ON c.value = ? AND c.case_id = a.case_id CROSS JOIN finding d ON d.value = ? AND d.case_id = a.case_id
    CROSS JOIN record r ON r.id = a.case_id WHERE a.value = ? GROUP BY ${columns}`).raw();
  const [byCause, byProof] = [join('r.cause'), join('r.cause, r.proof')];
  const questions = questionsOf(index, { seed: 11, count: rounds, findings: 4 });
  const rarestFirst = (findings: CodedFinding[]) => {
    const flats = findings.map((f) => flatOf(index, f)).sort((a, b) => (index.carrying[a] as number) - (index.carrying[b] as number));
    return [flats[1], flats[2], flats[3], flats[0]];
  };
  const ask = (findings: CodedFinding[]) => byCause.all(rarestFirst(findings)) as CauseCount[];
  const contradicting = contradictingBySql(index, db);
  const askAll = (findings: CodedFinding[]) => ({ matching: byProof.all(rarestFirst(findings)), contradicting: contradicting(findings) });
  for (const question of questions) {
    const { matching, compatible } = matchingCounts(index, question).byCause;
    for (const [cause, n] of ask(question)) if (cause !== null && matching[cause] !== n) throw new Error('The two ways count differently.');
    for (const [cause, n] of contradicting(question)) {
      if (cause !== null && (compatible[cause] as number) + n !== causeTotal(index, cause)) throw new Error('The two ways count compatible cases differently.');
    }
  }
  const rowOf = (id: string, work: string, alternative: string, measured: ReturnType<typeof paired>) =>
    fasterRow({ id, work: `${work}, 4 findings, ${label(index)}`, alternative }, measured, { atLeast: 40 });
  return [
    rowOf('matching', 'matching counts by cause', 'best indexed SQL join in SQLite', paired(questions, (q) => countMatching(index, q), ask)),
    rowOf(
      'matching-all',
      'all counts of a look-up (matching by cause and proof, compatible by cause)',
      'the join, and a union of what contradicts',
      paired(questions, (q) => matchingCounts(index, q), askAll),
    ),
  ];
}

/** Records by cause that carry another value of a finding's observable and not this one. */
function contradictingBySql({ layout }: RecordIndex, db: Database.Database): (findings: CodedFinding[]) => CauseCount[] {
  const statements = new Map<string, Database.Statement>();
  return (findings) => {
    const asked = findings.map(({ observable, value }) => {
      const start = layout.valueStarts[observable] as number;
      const values = Array.from({ length: layout.valueCounts[observable] as number }, (_, v) => start + v);
      return { others: values.filter((flat) => flat !== start + value), own: start + value };
    });
    const shape = asked.map(({ others }) => others.length).join();
    const statement = statements.get(shape) ?? db.prepare(`
      SELECT r.cause, count(*) FROM (${asked
        .map(({ others }) => `SELECT o.case_id AS id FROM finding o WHERE o.value IN (${others.map(() => '?').join()})
          AND NOT EXISTS (SELECT 1 FROM finding w WHERE w.value = ? AND w.case_id = o.case_id)`)
        .join(' UNION ')}) CROSS JOIN record r USING (id) GROUP BY r.cause`).raw();
    statements.set(shape, statement);
    return statement.all(asked.flatMap(({ others, own }) => [...others, own])) as CauseCount[];
  };
}

function causeTotal({ proofs, layout }: RecordIndex, cause: number): number {
  const PROOFS = proofs.length / (layout.deviceParents.length * layout.causeCount);
  return proofs.subarray(cause * PROOFS, (cause + 1) * PROOFS).reduce((sum, n) => sum + n, 0);
}

/** What is asked of both ways: what each value of an observable gains, and what a record adds by its device and proof. */
type Ask = { findings: CodedFinding[]; device: number; gains: (finding: CodedFinding) => ArrayLike<number>; term: { near: Float64Array; proof: readonly number[]; length: number } | null };

/** The most similar records beside one statement over the same tables, by the rarity of findings. */
export function similarRow({ index }: CasebookModel, db: Database.Database, { rounds, findings }: { rounds: number; findings: number | null }): Row {
  const gains = ({ observable, value }: CodedFinding) => {
    const flat = (index.layout.valueStarts[observable] as number) + value;
    const weight = Math.log((index.size + 1) / ((index.carrying[flat] as number) + 0.5));
    return Array.from({ length: index.layout.valueCounts[observable] as number }, (_, v) => (v === value ? weight : -CONTRADICTION_COST * weight));
  };
  const questions = questionsOf(index, { seed: 12, count: rounds, findings }).map((of): Ask => ({ findings: of, device: 0, gains, term: null }));
  const whole = findings === null;
  const measured = rankedBothWays({ index, db, questions }, ({ findings: of }) => rankSimilar(index, { device: null, findings: of }, { limit: 20 }));
  const work = `top 20 similar by weighted findings, ${whole ? 'a whole case' : `${findings} findings`}, ${label(index)}`;
  const head = { id: whole ? 'similar-whole' : 'similar', work, alternative: 'one SQL statement over the normalised tables, paired query by query' };
  return fasterRow(head, measured, { atLeast: whole ? 25 : 60 });
}

/** The same as a look-up ranks them: findings by what they tell of the cause, and the record's device and proof. */
export function similarAsShownRow(model: CasebookModel, db: Database.Database, rounds: number): Row {
  const { index, estimator, coding } = model;
  const boards = coding.devices.flatMap((node, n) => (node.level === 'board' ? [n] : [])).slice(0, 8);
  const weights = SIMILARITY_WEIGHTS;
  const worth = { 'same-board': weights.sameBoard, 'same-model': weights.sameModel, 'same-category': weights.sameCategory, other: 0 };
  const termsOn = (device: number) => similarityTerms(estimator, { index, device, weights });
  const questions = questionsOf(index, { seed: 13, count: rounds, findings: 5 }).map((findings, i): Ask => {
    const device = boards[i % boards.length] as number;
    const near = Float64Array.from(nearnessOfAll(index.layout, device), (nearness) => worth[nearness]);
    return { findings, device, gains: termsOn(device).gains, term: { near, proof: weights.proof, length: weights.length } };
  });
  const measured = rankedBothWays({ index, db, questions }, ({ device, findings }) => rankSimilar(index, { device, findings }, { limit: 20, ...termsOn(device) }));
  const work = `top 20 similar as a look-up ranks them (agreement on the cause, device, proof, length), 5 findings, ${label(index)}`;
  return fasterRow({ id: 'similar-as-shown', work, alternative: 'one SQL statement, with the same gains given' }, measured, { atLeast: 60, note: 'ours works out the gains too' });
}

/** Times of ranking by `rank` and by one statement, the scores of the first ten questions compared beforehand. */
function rankedBothWays({ index, db, questions }: { index: RecordIndex; db: Database.Database; questions: readonly Ask[] }, rank: (ask: Ask) => { score: number }[]) {
  const statements = new Map<string, Database.Statement>();
  const ask = ({ findings, gains, term }: Ask) => {
    const asked = findings.flatMap((finding) => {
      const start = index.layout.valueStarts[finding.observable] as number;
      return Array.from(gains(finding), (gain, v) => [start + v, gain, v === finding.value ? 1 : 0]);
    });
    const shape = `${asked.length} ${term !== null}`;
    const statement = statements.get(shape) ?? db.prepare(rankingBySql(asked.length, term));
    statements.set(shape, statement);
    const worth = term === null ? [] : [...Array.from(term.near, (gain, node) => [node, gain]).flat(), ...term.proof, term.length];
    return statement.all([...asked.flat(), ...worth]) as { case_id: number; score: number }[];
  };
  for (const question of questions.slice(0, 10)) {
    const [ours, theirs] = [rank(question), ask(question)];
    if (ours.length !== theirs.length) throw new Error('The two ways find differently many.');
    ours.forEach(({ score }, i) => {
      if (Math.abs(score - (theirs[i]?.score ?? Number.NaN)) > 1e-6) throw new Error('The two ways rank differently.');
    });
  }
  // The tables of the devices asked about are kept, as in a process that has run for a while.
  for (const question of questions) rank(question);
  return paired(questions, rank, ask);
}

function rankingBySql(asked: number, term: Ask['term']): string {
  const values = `WITH asked(value, gain, own) AS (VALUES ${Array.from({ length: asked }, () => '(?, ?, ?)').join(', ')})`;
  const found = `FROM asked CROSS JOIN finding f ON f.value = asked.value GROUP BY f.case_id HAVING max(asked.own) = 1`;
  if (term === null) return `${values} SELECT f.case_id, sum(asked.gain) AS score ${found} ORDER BY score DESC LIMIT 20`;
  const near = Array.from(term.near, () => '(?, ?)').join(', ');
  return `${values}, near(device, gain) AS (VALUES ${near}),
    found(id, score) AS (SELECT f.case_id, sum(asked.gain) ${found})
    SELECT r.id AS case_id, found.score + near.gain + CASE r.proof WHEN 0 THEN ? WHEN 1 THEN ? WHEN 2 THEN ? WHEN 3 THEN ? ELSE 0 END - ? * r.log_length AS score
    FROM found CROSS JOIN record r ON r.id = found.id CROSS JOIN near ON near.device = r.device ORDER BY score DESC LIMIT 20`;
}

function label({ size }: RecordIndex): string {
  return size >= 1_000_000 ? `${size / 1_000_000}M` : `${size / 1_000}k`;
}
