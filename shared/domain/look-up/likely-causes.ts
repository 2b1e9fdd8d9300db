import type { LookUpCause } from '../../schemas/look-up';
import { dirichletMarginalInterval } from '../../stats/dirichlet-marginal-interval';
import { strongestRival } from '../../stats/explain';
import type { Posterior } from '../../stats/estimator';
import type { MatchingCounts } from '../../stats/matching-counts';
import type { CasebookModel } from '../casebook/casebook-model';
import { designatorSplit } from '../casebook/designator-split';
import { type CauseExplainer, causeExplainer } from './explain-cause';
import type { CodedQuestion } from './read-question';

/** How many of the leading causes are explained and split by designator unless more are asked for. */
const EXPLAINED = 12;

export type CausesInput = {
  question: CodedQuestion;
  posterior: Posterior;
  counts: MatchingCounts;
  /** A further cause to be explained, by slug. */
  why: string | null;
};

/**
 * Every cause that can be the answer, likeliest first. The leading twelve, and the one asked for, carry their
 * explanations; for the others these are null.
 */
export function likelyCauses(model: CasebookModel, input: CausesInput): LookUpCause[] {
  const { probability } = input.posterior;
  const listed = model.coding.causes.length;
  const order = Array.from({ length: listed }, (_, cause) => cause)
    .filter((cause) => (probability[cause] as number) > 0)
    .sort((a, b) => (probability[b] as number) - (probability[a] as number) || a - b);
  const wanted = input.why === null ? undefined : model.coding.causeOf(input.why);
  const shared: Shared = {
    explainer: causeExplainer(model, input.question),
    seen: input.counts.byCause.matching.reduce((sum, n) => sum + (n > 0 ? 1 : 0), 0),
  };
  return order.map((cause, rank) => causeRow(model, { ...input, ...shared }, cause, rank < EXPLAINED || cause === wanted));
}

/** What the rows have in common: the explainer, and how many causes the matching cases have. */
type Shared = { explainer: CauseExplainer; seen: number };

function causeRow(model: CasebookModel, input: CausesInput & Shared, cause: number, explained: boolean): LookUpCause {
  const { question, posterior, counts, explainer, seen } = input;
  const slug = model.coding.causes[cause] as string;
  const entry = model.words.causes.get(slug);
  if (!entry) throw new Error(`The coding has a cause "${slug}" that the vocabulary lacks.`);
  const rival = strongestRival(posterior.probability, cause);
  const hasRival = (posterior.probability[rival] ?? 0) > 0;
  const board = question.read.device?.level === 'board' ? question.read.device.slug : null;
  return {
    id: slug,
    label: entry.label,
    role: model.words.roles.get(entry.role)?.label ?? entry.role,
    mode: entry.mode,
    probability: posterior.probability[cause] as number,
    low: posterior.low[cause] as number,
    high: posterior.high[cause] as number,
    ...countedFigures(counts, cause, seen),
    usualProof: entry.usualProof,
    designators: explained && board !== null ? designatorSplit(model, board, slug) : [],
    against: explained && hasRival ? explainer.against(cause, rival) : null,
    againstAll: explained ? explainer.againstAll(cause) : null,
  };
}

function countedFigures(counts: MatchingCounts, cause: number, seen: number) {
  const { matching, byCause } = counts;
  const own = byCause.matching[cause] as number;
  const proof = (index: number) => byCause.byProof[cause * 4 + index] as number;
  return {
    matching: own,
    compatible: byCause.compatible[cause] as number,
    matchingByProof: { substitution: proof(0), measurement: proof(1), repairHeld: proof(2), suspected: proof(3) },
    // One category more than the causes seen, for "cause not found".
    share: matching > 0 ? dirichletMarginalInterval(own, matching, Math.max(2, seen + 1)) : null,
  };
}
