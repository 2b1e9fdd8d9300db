import { excerptOf } from '../../shared/domain/casebook/case-entry';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../shared/domain/look-up/look-up';
import { withExcerpts } from '../../shared/domain/look-up/with-excerpts';
import type { LookUpResult } from '../../shared/schemas/look-up';
import type { Question } from '../../shared/schemas/question';
import type { Db } from '../db';
import { findNarratives } from '../repositories/case-repository';
import { createKeptAnswers, type KeptAnswers } from './kept-answers';
import { readyToAnswer } from './ready-to-answer';

/** Answers kept for a model: about a quarter of a megabyte each. */
const MOST_KEPT = 128;

const keptOf = new WeakMap<CasebookModel, KeptAnswers<LookUpResult>>();

/**
 * Answers a question from the model, with the beginnings of the texts of the similar cases from the database. The answer
 * depends on nothing but the question and the cases that are counted, so it is kept until these change. Read it, never change it.
 */
export function answerQuestion(db: Db, model: CasebookModel, question: Question): Promise<LookUpResult> {
  let kept = keptOf.get(model);
  if (kept === undefined) {
    kept = createKeptAnswers(MOST_KEPT);
    keptOf.set(model, kept);
  }
  return kept.answer({ key: JSON.stringify(question), revision: model.counts.revision }, async () => {
    await readyToAnswer(model, question);
    const figures = lookUp(model, question);
    return withExcerpts(figures, await findExcerpts(db, figures.similar.map(({ id }) => id)));
  });
}

/** The beginnings of the texts of the named cases, by id. */
export async function findExcerpts(db: Db, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const narratives = await findNarratives(db, ids);
  return new Map(narratives.map(({ id, narrative }) => [id, excerptOf(narrative)]));
}
