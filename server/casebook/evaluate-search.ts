import { addCase, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { createCoding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import { evaluateSimilar, type SimilarEvaluation } from '../../shared/domain/search/evaluate-similar';
import { searchDocument } from '../../shared/domain/search/search-document';
import { createTextScorer } from '../../shared/domain/search/text-scores';
import { AppError } from '../../shared/errors';
import type { CaseRecord } from '../../shared/schemas/case';
import { fitSettings } from '../../shared/stats/fit-settings';
import { stratifiedFolds } from '../../shared/stats/folds';
import { SIMILARITY_WEIGHTS } from '../../shared/stats/similarity-weights';
import type { Db } from '../db';
import { streamCases } from '../repositories/case-repository';
import { findCatalogue } from '../repositories/catalogue-repository';
import { loadVocabulary } from '../repositories/load-vocabulary';

export type SearchEvaluation = {
  /** Cases that were searched, and held-out cases with a cause that searched for them. */
  searched: number;
  heldOut: number;
  folds: number;
  seed: number;
  cuts: SimilarEvaluation;
};

export type EvaluateSearchOptions = { folds: number; seed: number; onProgress: (what: string) => void };

/** Fewest accepted cases that are worth splitting. */
const LEAST_CASES = 50;
/** Most records that the settings are fitted to. Similar cases hardly depend on them, and more would take minutes. */
const FIT_RECORDS = 150;
/** Held-out cases between two lines of progress. */
const TOLD_EVERY = 100;

/**
 * Holds out one part of the accepted cases and has each ranker find, among the others, the cases most like them; the
 * settings are fitted to the others alone. Refuses a casebook of fewer than 50 cases. `onProgress` is told what is begun.
 */
export async function evaluateSearch(db: Db, { folds, seed, onProgress }: EvaluateSearchOptions): Promise<SearchEvaluation> {
  const catalogue = await findCatalogue(db);
  if (catalogue === null) throw new AppError('casebook-empty');
  const vocabulary = await loadVocabulary(db);
  const coding = createCoding(vocabulary, catalogue);
  const cases: CaseRecord[] = [];
  for await (const record of streamCases(db, 'accepted')) cases.push(record);
  if (cases.length < Math.max(LEAST_CASES, folds)) {
    throw new AppError('too-few-cases', { detail: `It has ${cases.length}; at least ${Math.max(LEAST_CASES, folds)} are needed.` });
  }
  onProgress(`${cases.length} cases read; fitting`);
  const coded = cases.map((record) => encodeCase(coding, record.content));
  const fold = stratifiedFolds(coded, folds, seed);
  const isLearned = (_: unknown, index: number) => fold[index] !== 0;
  const learned = coded.filter(isLearned);
  const settings = fitSettings(coding.layout, learned, { maxRecords: FIT_RECORDS });
  const model = createCasebookModel(vocabulary, catalogue, () => settings);
  const searched = cases.filter(isLearned);
  onProgress(`filling a casebook of ${searched.length} cases`);
  for (const record of searched) addCase(model, record);
  const textScores = createTextScorer(searched.map((record) => searchDocument(model.words, record, false)));
  const heldOut = coded.filter((record, index) => fold[index] === 0 && record.causes.length > 0);
  const onQuestion = (done: number) => {
    if (done % TOLD_EVERY === 0) onProgress(`${done} of ${heldOut.length} held-out cases asked for`);
  };
  const cuts = evaluateSimilar({ model, textScores, weights: SIMILARITY_WEIGHTS, onQuestion }, heldOut);
  return { searched: searched.length, heldOut: heldOut.length, folds, seed, cuts };
}
