import Database from 'better-sqlite3';
import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../../shared/domain/look-up/look-up';
import { type Question, questionSchema } from '../../../shared/schemas/question';
import { readRow } from '../../../shared/stats/record-index';
import { atMostRow, paired, type Row } from '../run/measure';
import { drawNarrative, inventedWord, randomOf } from '../world/draw';

/** Questions in words, as they would be typed of drawn cases; every other one names a board, of which there are eight. */
export function lookUpQuestions({ coding, index, words }: CasebookModel, count: number): Question[] {
  const random = randomOf(31);
  const boards = [...words.devices.values()].filter(({ level }) => level === 'board').slice(0, 8);
  return Array.from({ length: count }, (_, i) => {
    const { findings } = readRow(index, Math.floor(random() * index.rows));
    const seen = findings.flatMap(({ flat }) => {
      const observable = index.observables[flat] as number;
      const named = coding.observables[observable];
      const value = named?.values[flat - (index.layout.valueStarts[observable] as number)];
      return named && value ? [{ kind: named.kind, id: named.id, value }] : [];
    });
    const symptoms = seen.filter((f) => f.kind === 'symptom' && f.value === 'present').slice(0, 3);
    const text = symptoms.map((f) => words.symptoms.get(f.id)?.label).join(', ');
    const set = seen.filter((f) => f.kind === 'check').slice(0, 2);
    return questionSchema.parse({ text, set, device: i % 2 === 0 ? null : boards[i % 8]?.slug });
  });
}

/** A full-text table of so many texts of 120 words; returns three-word queries for it too. */
export function fullText(count: number): { db: Database.Database; queries: string[] } {
  const db = new Database(':memory:');
  db.exec('CREATE VIRTUAL TABLE text USING fts5(narrative)');
  const insert = db.prepare('INSERT INTO text (rowid, narrative) VALUES (?, ?)');
  const random = randomOf(32);
  db.transaction(() => {
    for (let i = 0; i < count; i += 1) insert.run(i + 1, drawNarrative(random, 120));
  })();
  return { db, queries: threeWords(60) };
}

/** Words of the middle of the language, neither the commonest nor the rarest: most texts have one, few have all three. */
export function threeWords(count: number): string[] {
  const random = randomOf(33);
  return Array.from({ length: count }, () => Array.from({ length: 3 }, () => inventedWord(10 + Math.floor(random() * 90))).join(' '));
}

/** Everything that a look-up does in the process, beside one raw full-text query. */
export function lookUpRow(model: CasebookModel, rounds: number): Row {
  const { db, queries } = fullText(model.index.size);
  const search = db.prepare('SELECT rowid FROM text WHERE text MATCH ? ORDER BY rank LIMIT 20');
  const questions = lookUpQuestions(model, rounds).map((question, i) => ({ question, query: queries[i % queries.length] as string }));
  for (const { question } of questions) lookUp(model, question);
  const measured = paired(questions, ({ question }) => lookUp(model, question), ({ query }) => search.all(query));
  db.close();
  const head = {
    id: 'look-up',
    work: `whole look-up in process (read words, posterior with intervals and explanation, next checks, similar), ${model.index.size / 1000}k`,
    alternative: 'one raw FTS5 query of three words',
  };
  return atMostRow(head, measured, { atMost: 2, note: 'tables of the devices kept; the database is not asked for texts' });
}
