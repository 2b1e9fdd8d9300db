import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { prepareAnswer } from '../../shared/domain/look-up/prepare-answer';
import type { Question } from '../../shared/schemas/question';
import { inSlices } from '../event-loop/take-turns';

/** Where cases keep changing meanwhile, the answer is given after so many attempts all the same. */
const MOST_ATTEMPTS = 3;

/**
 * Resolves when the tables that an answer to the question reads are there for the cases as they are counted now. After a change of
 * the casebook that is some hundredths of a second of work, which is done in slices: nobody else waits for it.
 */
export async function readyToAnswer(model: CasebookModel, question: Question): Promise<void> {
  for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt += 1) {
    const { revision } = model.counts;
    await inSlices(prepareAnswer(model, question));
    if (model.counts.revision === revision) return;
  }
}
