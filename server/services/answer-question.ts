import { excerptOf } from '../../shared/domain/casebook/case-entry';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { lookUp } from '../../shared/domain/look-up/look-up';
import { withExcerpts } from '../../shared/domain/look-up/with-excerpts';
import type { LookUpResult } from '../../shared/schemas/look-up';
import type { Question } from '../../shared/schemas/question';
import type { Db } from '../db';
import { findNarratives } from '../repositories/case-repository';

/** Answers a question from the model, and adds the beginnings of the texts of the similar cases from the database. */
export async function answerQuestion(db: Db, model: CasebookModel, question: Question): Promise<LookUpResult> {
  const figures = lookUp(model, question);
  return withExcerpts(figures, await findExcerpts(db, figures.similar.map(({ id }) => id)));
}

/** The beginnings of the texts of the named cases, by id. */
export async function findExcerpts(db: Db, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const narratives = await findNarratives(db, ids);
  return new Map(narratives.map(({ id, narrative }) => [id, excerptOf(narrative)]));
}
