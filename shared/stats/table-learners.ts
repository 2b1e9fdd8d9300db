import { blend } from './blend';
import { countAll } from './count-all';
import type { Estimator } from './estimator';
import { fitAode } from './fit-aode';
import { fitLogisticMember } from './fit-logistic';
import { fitSettings } from './fit-settings';
import { fitTan } from './fit-tan';
import type { CodedRecord, Layout } from './layout';
import { pairCountsFit } from './pair-counts';
import { createPlainEstimator } from './plain-naive-bayes';
import { asEstimator, type TableMember } from './table-member';
import { createEstimator } from './weighted-naive-bayes';

/** An estimator's way from records to predictions; everything it learns comes from these records alone. */
export type Learner = { name: string; learn(layout: Layout, records: readonly CodedRecord[]): Pick<Estimator, 'probabilities'> };

const WEIGHTED: Learner = {
  name: 'weighted naive Bayes',
  learn: (layout, records) =>
    createEstimator(layout, countAll(layout, records), fitSettings(layout, records, { unlisted: false })),
};

/** Plain naive Bayes and the bare prior, which everything else is measured against. */
const REFERENCES: readonly Learner[] = [
  { name: 'naive Bayes', learn: (layout, records) => createPlainEstimator(layout, countAll(layout, records)) },
  {
    name: 'prior',
    learn: (layout, records) => {
      const prior = createPlainEstimator(layout, countAll(layout, records)).prior(0);
      return { probabilities: () => prior };
    },
  },
];

/**
 * The estimators compared on a table: the default one, plain naive Bayes, the bare prior, then the others. The default
 * is the blend of tree-augmented naive Bayes and logistic regression; on a table with too many causes and values to
 * count them by twos it is weighted naive Bayes, and the estimators that need such counts are left out.
 */
export function tableLearners(layout: Layout): Learner[] {
  if (!pairCountsFit(layout)) return [WEIGHTED, ...REFERENCES];
  const tan = remembered(fitTan);
  const logistic = remembered(fitLogisticMember);
  const both: Fit = (of, records) => blend(records, [tan(of, records), logistic(of, records)]);
  return [
    memberLearner('blend', both),
    ...REFERENCES,
    WEIGHTED,
    memberLearner('shrunken AODE', fitAode),
    memberLearner('shrunken TAN', tan),
    memberLearner('logistic regression', logistic),
  ];
}

type Fit = (layout: Layout, records: readonly CodedRecord[]) => TableMember;
type Predicting = (...of: Parameters<Fit>) => Pick<TableMember, 'predict'>;

function memberLearner(name: string, fit: Predicting): Learner {
  return { name, learn: (layout, records) => asEstimator(layout, records, fit(layout, records)) };
}

/** The same list of records is fitted once, though two learners ask for it. */
function remembered(fit: Fit): Fit {
  const known = new WeakMap<readonly CodedRecord[], TableMember>();
  return (layout, records) => {
    const member = known.get(records) ?? fit(layout, records);
    known.set(records, member);
    return member;
  };
}
