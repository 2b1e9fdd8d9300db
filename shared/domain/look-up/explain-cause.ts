import type { Explanation, ExplanationAll } from '../../schemas/look-up';
import { createExplainer } from '../../stats/explain';
import type { CasebookModel } from '../casebook/casebook-model';
import { findingLabel, findingValueLabel } from '../casebook/vocabulary-words';
import { decodeFinding } from '../coding/coding';
import type { CodedQuestion } from './read-question';

/** The row of causes that are on no record of the casebook. */
export const UNLISTED = { id: 'unlisted', label: 'A cause on no record here' } as const;

type Weighed = { observable: number; value: number; weight: number };

/** Explains causes of one question in words, in decibans. */
export type CauseExplainer = {
  /** Against one rival; `total` is the sum of prior and items, without remainder. */
  against(cause: number, rival: number): Explanation;
  /** Against all others together. */
  againstAll(cause: number): ExplanationAll;
};

/** Makes the explainer of a question. */
export function causeExplainer(model: CasebookModel, question: CodedQuestion): CauseExplainer {
  const explainer = createExplainer(model.estimator, question);
  return {
    against: (cause, rival) => {
      const { prior, items, total } = explainer.against(cause, rival);
      return { rival: causeName(model, rival), prior, items: inWords(model, question, items), total };
    },
    againstAll: (cause) => {
      const { prior, items, interaction, mixing, total } = explainer.againstAll(cause);
      return { prior, items: inWords(model, question, items), interaction, mixing, total };
    },
  };
}

/** Slug and label of a cause by its index; the index after the last is the unlisted cause. */
export function causeName(model: CasebookModel, cause: number): { id: string; label: string } {
  const id = model.coding.causes[cause];
  if (id === undefined) return { ...UNLISTED };
  return { id, label: model.words.causes.get(id)?.label ?? id };
}

function inWords(model: CasebookModel, question: CodedQuestion, items: readonly Weighed[]): Explanation['items'] {
  const implied = new Set(question.findings.filter((f) => f.implied).map((f) => f.observable));
  return items.map(({ observable, value, weight }) => {
    const finding = decodeFinding(model.coding, { observable, value });
    return {
      finding,
      label: findingLabel(model.words, finding),
      value: findingValueLabel(model.words, finding),
      weight,
      implied: implied.has(observable),
    };
  });
}
