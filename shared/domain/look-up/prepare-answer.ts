import type { Question } from '../../schemas/question';
import type { CasebookModel } from '../casebook/casebook-model';
import type { Steps } from '../steps/steps';
import { openChecks } from './check-candidates';
import { readQuestion } from './read-question';

/**
 * Makes the tables that the answer to a question reads, a piece of a millisecond or two at a time, so that other work can go on in
 * between. The estimator keeps them until the cases change: the answer is the same without, but then makes them all at once.
 */
export function* prepareAnswer(model: CasebookModel, asked: Question): Steps<void> {
  const { device, findings, read } = readQuestion(model, asked);
  yield;
  yield* model.estimator.prepare(device, findings);
  yield;
  for (const { observable } of openChecks(model, read)) {
    model.estimator.outcomeTable(device, observable, findings);
    yield;
  }
}
