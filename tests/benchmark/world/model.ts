import { addCase, type CasebookModel, createCasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { drawCases } from './draw';
import { generatedCatalogue, generatedVocabulary } from './words';

/** A model of the generated world without cases. */
export function emptyModel(): CasebookModel {
  return createCasebookModel(generatedVocabulary(), generatedCatalogue());
}

/** A model of so many drawn cases. */
export function drawnModel(seed: number, count: number, onProgress: (done: number) => void): CasebookModel {
  const model = emptyModel();
  let done = 0;
  for (const record of drawCases(seed, count)) {
    addCase(model, record);
    done += 1;
    if (done % 20_000 === 0) onProgress(done);
  }
  return model;
}
