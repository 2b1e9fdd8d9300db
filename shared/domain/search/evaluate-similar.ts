import { CUTS, cutRecord } from '../../stats/cut-record';
import { distinctFindings, flatValue } from '../../stats/findings';
import { FIX, type CodedRecord, type RecordedFinding } from '../../stats/layout';
import { liveRows, NO_CAUSE, readRow, statedValues } from '../../stats/record-index';
import { forEachCause } from '../../stats/record-words';
import type { RowTerm } from '../../stats/rank-by-gain';
import { rankSimilar } from '../../stats/rank-similar';
import { normalisedDiscountedGain, reciprocalRank } from '../../stats/ranking-measures';
import { similarityTerms } from '../../stats/similarity-terms';
import type { SimilarityWeights } from '../../stats/similarity-weights';
import type { CasebookModel } from '../casebook/casebook-model';
import { findingLabel, findingValueLabel } from '../casebook/vocabulary-words';
import { decodeFinding } from '../coding/coding';
import type { TextScorer } from './text-scores';

/** Results that are looked at. */
const DEPTH = 10;
/** Relevance of a case with the same cause, and of one whose cause is another fault of the same part's role. */
export const GRADES = { sameCause: 2, sameRole: 1 } as const;

export const RANKERS = ['weighted findings', 'text relevance', 'unweighted overlap', 'Jaccard'] as const;
export type Ranker = (typeof RANKERS)[number];

/** Means over the questions of one cut. Shares and measures 0 to 1; `distinctCauses` of the first ten, 0 to 10. */
export type RankerScores = {
  ranker: Ranker;
  hit1: number;
  hit3: number;
  hit10: number;
  ndcg10: number;
  mrr: number;
  distinctCauses: number;
};
export type SimilarEvaluation = { cut: string; questions: number; results: RankerScores[] }[];

export type SimilarTask = {
  /** Holds the cases that are searched, and learned from them alone. */
  model: CasebookModel;
  /** Scores of the searched cases for a text, by the row of the model's index. */
  textScores: TextScorer;
  weights: SimilarityWeights;
  /** Which rankers are scored; all of them unless told. */
  rankers?: readonly Ranker[];
  /** Told how many held-out cases were asked for. */
  onQuestion?: (done: number) => void;
};

type Sums = Omit<RankerScores, 'ranker'> & { questions: number };

/**
 * How well similar cases are found for held-out cases: each is cut to what a look-up would have known at four moments,
 * and every ranker orders the searched cases. Relevance is graded by the cause: 2 for the same, 1 for the same role.
 * Held-out cases without a cause, and cuts with nothing stated, are passed over.
 */
export function evaluateSimilar(task: SimilarTask, heldOut: readonly CodedRecord[]): SimilarEvaluation {
  const rankers = task.rankers ?? RANKERS;
  const { index } = task.model;
  const stated = Array.from({ length: index.rows }, (_, row) => statedValues(readRow(index, row)));
  const sums = CUTS.map(() => rankers.map((): Sums => ({ questions: 0, hit1: 0, hit3: 0, hit10: 0, ndcg10: 0, mrr: 0, distinctCauses: 0 })));
  for (const [done, record] of heldOut.entries()) {
    task.onQuestion?.(done);
    if (record.causes.length === 0) continue;
    const grades = gradesFor(task.model, record);
    const available = [...grades.values()];
    const { findings, lengths } = cutRecord(task.model.coding.layout, record);
    lengths.forEach((length, cut) => {
      const known = findings.slice(0, length);
      const own = known.filter((f) => !f.implied);
      if (own.length === 0) return;
      rankers.forEach((ranker, at) => {
        const rows = rank(task, ranker, { device: record.device, stated: own, known, searched: stated });
        addScores(sums[cut]?.[at] as Sums, rows.map((row) => grades.get(row) ?? 0), { available, rows, model: task.model });
      });
    });
  }
  return CUTS.map((cut, c) => ({
    cut,
    questions: sums[c]?.[0]?.questions ?? 0,
    results: rankers.map((ranker, r) => meanOf(ranker, sums[c]?.[r] as Sums)),
  }));
}

/** Relevance of every searched case with a cause that is the held-out one's, or of its role. */
function gradesFor({ index, coding, words }: CasebookModel, record: CodedRecord): Map<number, number> {
  const roleOf = (cause: number) => words.causes.get(coding.causes[cause] as string)?.role;
  const roles = new Set(record.causes.map(roleOf));
  const grades = new Map<number, number>();
  for (const row of liveRows(index)) {
    forEachCause(index, row, (cause) => {
      const grade = record.causes.includes(cause) ? GRADES.sameCause : roles.has(roleOf(cause)) ? GRADES.sameRole : 0;
      if (grade > (grades.get(row) ?? 0)) grades.set(row, grade);
    });
  }
  return grades;
}

type Asked = { device: number; stated: readonly RecordedFinding[]; /** With what follows from it. */ known: readonly RecordedFinding[]; /** Values that each searched case states. */ searched: readonly Uint16Array[] };

function rank(task: SimilarTask, ranker: Ranker, asked: Asked): number[] {
  const { model, weights } = task;
  if (ranker === 'weighted findings') {
    const { index, estimator } = model;
    const { gains, term } = similarityTerms(estimator, { index, device: asked.device, weights });
    const text = weights.text === 0 ? null : task.textScores(textOf(model, asked));
    const whole = text === null ? term : withText(term, text, weights.text);
    return rankSimilar(index, { device: asked.device, findings: asked.known }, { limit: DEPTH, gains, term: whole }).map((hit) => hit.row);
  }
  if (ranker === 'text relevance') return bestRows(task.textScores(textOf(model, asked)));
  return bestRows(overlaps(model, asked, ranker === 'Jaccard'));
}

function withText(term: RowTerm, text: ArrayLike<number>, weight: number): RowTerm {
  let most = 0;
  for (let row = 0; row < text.length; row += 1) most = Math.max(most, weight * (text[row] as number));
  return { of: (row) => term.of(row) + weight * (text[row] as number), most: term.most + most };
}

/** What somebody would type who knows this: device, labels and values. */
function textOf(model: CasebookModel, { device, stated }: Pick<Asked, 'device' | 'stated'>): string {
  const slug = model.coding.devices[device]?.slug ?? '';
  const said = stated.map((f) => {
    const finding = decodeFinding(model.coding, f);
    const value = findingValueLabel(model.words, finding);
    return model.coding.layout.kinds[f.observable] === FIX || finding.kind === 'check' ? `${findingLabel(model.words, finding)} ${value}` : findingLabel(model.words, finding);
  });
  return [model.words.devices.get(slug)?.label ?? '', ...said].join('\n');
}

/** Findings in common with each searched case; for Jaccard's index over those that either has. */
function overlaps({ coding }: CasebookModel, { stated, searched }: Asked, isJaccard: boolean): Float64Array {
  const own = new Set(distinctFindings(coding.layout, stated).map((f) => flatValue(coding.layout, f)));
  return Float64Array.from(searched, (values) => {
    const common = values.reduce((sum, value) => sum + (own.has(value) ? 1 : 0), 0);
    return isJaccard ? common / (own.size + values.length - common) : common;
  });
}

function bestRows(scores: Float64Array): number[] {
  const rows = [...scores.keys()].filter((row) => (scores[row] as number) > 0);
  return rows.sort((a, b) => (scores[b] as number) - (scores[a] as number) || a - b).slice(0, DEPTH);
}

function addScores(sums: Sums, gains: readonly number[], found: { available: number[]; rows: number[]; model: CasebookModel }): void {
  const same = gains.map((gain) => gain === GRADES.sameCause);
  const ndcg = normalisedDiscountedGain(gains, found.available, DEPTH);
  // A cause that no searched case has cannot be found by anybody.
  if (ndcg === null) return;
  sums.questions += 1;
  sums.ndcg10 += ndcg;
  sums.mrr += reciprocalRank(same);
  sums.hit1 += same[0] ? 1 : 0;
  sums.hit3 += same.slice(0, 3).includes(true) ? 1 : 0;
  sums.hit10 += same.includes(true) ? 1 : 0;
  sums.distinctCauses += new Set(found.rows.map((row) => found.model.index.firstCause[row]).filter((cause) => cause !== NO_CAUSE)).size;
}

function meanOf(ranker: Ranker, { questions, ...sums }: Sums): RankerScores {
  const mean = (sum: number) => (questions === 0 ? 0 : sum / questions);
  return {
    ranker,
    hit1: mean(sums.hit1),
    hit3: mean(sums.hit3),
    hit10: mean(sums.hit10),
    ndcg10: mean(sums.ndcg10),
    mrr: mean(sums.mrr),
    distinctCauses: mean(sums.distinctCauses),
  };
}
