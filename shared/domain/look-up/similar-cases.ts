import type { SimilarFigures } from '../../schemas/look-up';
import { rankSimilar } from '../../stats/rank-similar';
import { recordReasons, similarityTerms } from '../../stats/similarity-terms';
import { SIMILARITY_WEIGHTS } from '../../stats/similarity-weights';
import type { CasebookModel } from '../casebook/casebook-model';
import { findingLabel, findingValueLabel } from '../casebook/vocabulary-words';
import { decodeFinding } from '../coding/coding';
import type { CodedQuestion } from './read-question';

const BEST = 10;

/**
 * The cases most like this unit: what they share weighs by how telling of the cause it is, contradictions count against;
 * a near device, the same part at fault and a cause well proved count for. Empty where nothing was stated.
 */
export function similarCases(model: CasebookModel, question: CodedQuestion, limit = BEST): SimilarFigures[] {
  const stated = question.findings.filter((f) => !f.implied);
  if (stated.length === 0) return [];
  const { index, estimator } = model;
  const terms = similarityTerms(estimator, { index, device: question.device, weights: SIMILARITY_WEIGHTS });
  return rankSimilar(index, question, { limit, ...terms }).flatMap((hit) => {
    const entry = model.entries.get(hit.row);
    const place = entry && model.words.devices.get(entry.device);
    if (!entry || !place) return [];
    return [
      {
        id: entry.id,
        score: hit.score,
        ...nearnessOf(recordReasons(index, question.device, hit.row)),
        device: { slug: place.slug, label: place.label },
        month: entry.month,
        shared: hit.shared.map((coded) => findingInWords(model, coded)),
        contradicting: hit.contradicting.map(({ observable, value, there }) => ({
          ...findingInWords(model, { observable, value }),
          there: findingInWords(model, { observable, value: there }).value,
        })),
        cause: entry.causes.map(({ cause, designators }) => ({
          id: cause,
          label: model.words.causes.get(cause)?.label ?? cause,
          designators,
        })),
        proof: entry.proof,
        outcome: entry.outcome,
      },
    ];
  });
}

function nearnessOf({ nearness, sharesPart }: ReturnType<typeof recordReasons>) {
  return { nearness, sharesPart };
}

function findingInWords(model: CasebookModel, coded: { observable: number; value: number }) {
  const finding = decodeFinding(model.coding, coded);
  return { finding, label: findingLabel(model.words, finding), value: findingValueLabel(model.words, finding) };
}
