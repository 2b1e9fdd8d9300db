import type { World } from '../../seed/world';
import { addCase, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { vocabularyWords } from '../../shared/domain/casebook/vocabulary-words';
import { createCoding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { searchDocument } from '../../shared/domain/search/search-document';
import { createTextScorer } from '../../shared/domain/search/text-scores';
import { fitSettings } from '../../shared/stats/fit-settings';
import { stratifiedFolds } from '../../shared/stats/folds';

const FIT_RECORDS = 150;

/** A case id: 16 letters. */
const plainId = (i: number) => [...i.toString(26).padStart(16, '0')].map((d) => String.fromCharCode(97 + Number.parseInt(d, 26))).join('');

/**
 * Drawn cases of a world: one fifth held out, the others in a casebook with settings fitted to a sample of them.
 * The similar cases hardly depend on the settings (.005 of nDCG@10 between none fitted and all), so a small sample does.
 */
export function searchedWorld(world: World, seed: number, cases: number) {
  const coding = createCoding(world.vocabulary, world.catalogue);
  const contents = world.drawCases(seed, cases).map(({ content }) => content);
  const records = contents.map((content) => encodeCase(coding, content));
  const fold = stratifiedFolds(records, 5, 7);
  const learned = contents.filter((_, i) => fold[i] !== 0);
  const settings = fitSettings(coding.layout, records.filter((_, i) => fold[i] !== 0), { maxRecords: FIT_RECORDS });
  const model = createCasebookModel(world.vocabulary, world.catalogue, () => settings);
  const words = vocabularyWords(world.vocabulary, world.catalogue);
  const cased = learned.map((content, i) => ({ id: plainId(i), status: 'accepted' as const, content }));
  for (const record of cased) addCase(model, record);
  const textScores = createTextScorer(cased.map((record) => searchDocument(words, record, false)));
  return { model, textScores, heldOut: records.filter((_, i) => fold[i] === 0) };
}
