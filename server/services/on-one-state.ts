import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { allSteps, type Steps } from '../../shared/domain/steps/steps';
import { inSlices } from '../event-loop/take-turns';

/** Where cases keep changing meanwhile, the work is done without a pause after so many attempts. */
const MOST_ATTEMPTS = 3;

/**
 * Does work on the cases that a model counts in slices, so that nobody else waits for it; anew where they changed on the way, so that
 * what comes out is of one state of the casebook, the newest.
 */
export async function onOneState<T>(model: CasebookModel, work: () => Steps<T>): Promise<T> {
  for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt += 1) {
    const { revision } = model.counts;
    const made = await inSlices(work());
    if (model.counts.revision === revision) return made;
  }
  return allSteps(work());
}
