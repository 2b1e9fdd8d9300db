import type { SimilarFigures } from '../../schemas/look-up';
import { rankSimilar } from '../../stats/rank-similar';
import type { CasebookModel } from '../casebook/casebook-model';
import { findingLabel, findingValueLabel } from '../casebook/vocabulary-words';
import { decodeFinding } from '../coding/coding';
import type { CodedQuestion } from './read-question';

const BEST = 10;

/**
 * The cases most like this unit: what they share weighs by how telling it is, contradictions count against, and a
 * near device counts for. Empty where nothing was stated.
 */
export function similarCases(model: CasebookModel, question: CodedQuestion): SimilarFigures[] {
  const stated = question.findings.filter((f) => !f.implied);
  if (stated.length === 0) return [];
  return rankSimilar(model.index, { device: question.device, findings: stated }, { limit: BEST }).flatMap((hit) => {
    const entry = model.entries.get(hit.row);
    const place = entry && model.words.devices.get(entry.device);
    if (!entry || !place) return [];
    return [
      {
        id: entry.id,
        score: hit.score,
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

function findingInWords(model: CasebookModel, coded: { observable: number; value: number }) {
  const finding = decodeFinding(model.coding, coded);
  return { finding, label: findingLabel(model.words, finding), value: findingValueLabel(model.words, finding) };
}
