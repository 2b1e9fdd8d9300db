import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { prepareAnswer } from '../../shared/domain/look-up/prepare-answer';
import type { Question } from '../../shared/schemas/question';
import { onOneState } from './on-one-state';

/**
 * Resolves when the tables that an answer to the question reads are there for the cases as they are counted now. After a change of
 * the casebook that is some hundredths of a second of work, which is done in slices: nobody else waits for it.
 */
export async function readyToAnswer(model: CasebookModel, question: Question): Promise<void> {
  await onOneState(model, () => prepareAnswer(model, question));
}
