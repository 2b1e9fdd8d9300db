import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { preparePlan } from '../../shared/domain/plan/plan-repair';
import type { PlanOptions, PlanResult } from '../../shared/schemas/plan';
import type { Question } from '../../shared/schemas/question';
import { findPlanAside } from '../aside/find-plan-aside';
import { createKeptAnswers, type KeptAnswers } from './kept-answers';
import { readyToAnswer } from './ready-to-answer';

/** Plans kept for a model: some ten kilobytes each. */
const MOST_KEPT = 256;

const keptOf = new WeakMap<CasebookModel, KeptAnswers<PlanResult>>();

/** The repair plan for a question, searched for in a thread of its own and kept until the cases change. Read it, never change it. */
export function makePlan(model: CasebookModel, question: Question, options: PlanOptions): Promise<PlanResult> {
  const kept = keptOf.get(model) ?? createKeptAnswers<PlanResult>(MOST_KEPT);
  keptOf.set(model, kept);
  return kept.answer({ key: JSON.stringify([question, options]), revision: model.counts.revision }, async () => {
    await readyToAnswer(model, question);
    const { task, inWords } = preparePlan(model, question, options);
    return inWords(await findPlanAside(task));
  });
}
