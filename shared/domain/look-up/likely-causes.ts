import type { LookUpCause } from '../../schemas/look-up';
import { dirichletMarginalInterval } from '../../stats/dirichlet-marginal-interval';
import { strongestRival } from '../../stats/explain';
import type { Posterior } from '../../stats/estimator';
import type { Interval } from '../../stats/jeffreys-interval';
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
  const order: number[] = [];
  for (let cause = 0; cause < listed; cause += 1) if ((probability[cause] as number) > 0) order.push(cause);
  order.sort((a, b) => (probability[b] as number) - (probability[a] as number) || a - b);
  const wanted = input.why === null ? undefined : model.coding.causeOf(input.why);
  const seen = input.counts.byCause.matching.reduce((sum, n) => sum + (n > 0 ? 1 : 0), 0);
  // One category more than the causes seen, for "cause not found".
  const shares = createShares(input.counts.matching, Math.max(2, seen + 1));
  const common = { ...input, explainer: causeExplainer(model, input.question), shares };
  return order.map((cause, rank) => causeRow(model, common, cause, rank < EXPLAINED || cause === wanted));
}

/** What the rows have in common: the explainer, and intervals of shares of the matching cases by their number. */
type Shared = { explainer: CauseExplainer; shares: (cases: number) => Interval | null };

/** Intervals of so many of the matching cases, each worked out once: many causes have none or one of them. */
function createShares(matching: number, categories: number): Shared['shares'] {
  const known = new Map<number, Interval>();
  return (cases) => {
    if (matching === 0) return null;
    const share = known.get(cases) ?? dirichletMarginalInterval(cases, matching, categories);
    known.set(cases, share);
    return share;
  };
}

function causeRow(model: CasebookModel, input: CausesInput & Shared, cause: number, explained: boolean): LookUpCause {
  const { question, posterior, counts, explainer, shares } = input;
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
    ...countedFigures(counts, cause),
    share: shares(counts.byCause.matching[cause] as number),
    usualProof: entry.usualProof,
    designators: explained && board !== null ? designatorSplit(model, board, slug) : [],
    against: explained && hasRival ? explainer.against(cause, rival) : null,
    againstAll: explained ? explainer.againstAll(cause) : null,
  };
}

function countedFigures({ byCause: { matching, compatible, byProof } }: MatchingCounts, cause: number) {
  const [substitution, measurement, repairHeld, suspected] = byProof.subarray(cause * 4, cause * 4 + 4) as unknown as [number, number, number, number];
  return {
    matching: matching[cause] as number,
    compatible: compatible[cause] as number,
    matchingByProof: { substitution, measurement, repairHeld, suspected },
  };
}
