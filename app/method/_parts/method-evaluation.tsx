import { formatCount, formatPercent } from '../../_components/format-figures';
import { type EvaluationView, evaluationSchema } from '../../../shared/schemas/evaluation';
import { CutTable } from './cut-table';
import { GroupTable } from './group-table';
import { KnownTruth } from './known-truth';
import { ReliabilityDiagram } from './reliability-diagram';

type MethodEvaluationProps = { evaluation: { at: string; result: unknown } | null; demo: boolean };

/** Whether the figures tell the truth: the latest evaluation of the casebook, or how to run one. */
export function MethodEvaluation({ evaluation, demo }: MethodEvaluationProps) {
  const parsed = evaluation === null ? null : evaluationSchema.safeParse(evaluation.result);
  return (
    <>
      <h2>Does it tell the truth?</h2>
      <p>
        The casebook can be put to the test: parts of it are held out, the model is made again without them, and each case that
        was held out is predicted as far as it was known at several points of its repair.
      </p>
      {parsed?.success ? (
        <>
          <EvaluationTables evaluation={parsed.data} />
          {demo && parsed.data.knownTruth === null ? <HowToTest lead="It has not been held against its own world yet." demo /> : null}
        </>
      ) : (
        <HowToTest lead="This casebook has not been put to the test yet." demo={demo} />
      )}
    </>
  );
}

/** Which command gives what is missing here, how long it takes, and what it does besides. */
function HowToTest({ lead, demo }: { lead: string; demo: boolean }) {
  return (
    <div className="note">
      <div>
        <p>
          <strong>{lead}</strong> Whoever keeps it can do so on the machine that serves this page, while it is being used:
        </p>
        <code className="formula">npm run --silent cli -- evaluate{demo ? ' --demo' : ''}</code>
        <p>
          {demo
            ? `On the demo’s 4,200 cases that takes some ten minutes: ten refits, in which cases are also held against the exact
              probabilities of their invented world, and 200 invented units repaired by the plan, by the first suggested check and by
              three habits.`
            : 'It refits once for each of ten parts: seconds for a few hundred cases, some ten minutes for thousands.'}{' '}
          It says on the way how long the rest takes, and changes nothing. The result then stands here.
        </p>
      </div>
    </div>
  );
}

function EvaluationTables({ evaluation }: { evaluation: EvaluationView }) {
  return (
    <>
      <p>
        The latest test: {formatCount(evaluation.rows)} cases in {evaluation.folds} parts,{' '}
        {evaluation.repeats === 1 ? 'once over' : `${evaluation.repeats} times over`}. Log
        loss and Brier score are better when smaller; the calibration error says how far stated chances and frequencies lie apart.
        {evaluation.fitRecords === null
          ? null
          : ` In each round the settings were fitted on at most ${formatCount(evaluation.fitRecords)} of the cases that were not held out.`}
      </p>
      {evaluation.brackets === null ? null : (
        <>
          <ReliabilityDiagram brackets={evaluation.brackets} />
          <p>
            {formatPercent(evaluation.brackets.held)} of the stated chances lie where the bracket holds what was observed; a
            bracket is {Math.round(evaluation.brackets.width * 100)} points wide on average.
          </p>
        </>
      )}
      {evaluation.cuts.map(({ cut, results }) => (
        <CutTable
          key={cut}
          cut={cut}
          heads={['First right', 'In first three', 'Log loss', 'Brier', 'Calibration error']}
          rows={results.map(({ estimator, accuracy, top3, logLoss, brier, ece }) => ({
            model: estimator,
            figures: [formatPercent(accuracy), formatPercent(top3), logLoss.toFixed(2), brier.toFixed(2), ece.toFixed(3)],
          }))}
        />
      ))}
      {evaluation.knownTruth === null ? null : <KnownTruth known={evaluation.knownTruth} />}
      <GroupTable summary="Device by device" name="Device" groups={evaluation.byDevice} />
      <GroupTable summary="Cause by cause" name="Cause" groups={evaluation.byCause} />
      <KnownWeaknesses evaluation={evaluation} />
    </>
  );
}

/** Fewest predictions from which a group is named as a weakness. */
const LEAST_PREDICTIONS = 15;

/** Where the model did worst, named from the figures, and what the test itself cannot see. */
function KnownWeaknesses({ evaluation }: { evaluation: EvaluationView }) {
  const worst = (groups: EvaluationView['byDevice']) =>
    groups
      .filter(({ count }) => count >= LEAST_PREDICTIONS)
      .sort((a, b) => b.logLoss - a.logLoss)
      .slice(0, 3)
      .map(({ label, accuracy }) => `${label} (first right in ${formatPercent(accuracy)})`)
      .join(', ');
  const devices = worst(evaluation.byDevice);
  const causes = worst(evaluation.byCause);
  return (
    <>
      <h3>Known weaknesses</h3>
      <ul>
        {devices === '' ? null : <li>Worst predicted devices: {devices}.</li>}
        {causes === '' ? null : <li>Worst predicted causes: {causes}.</li>}
        <li>
          The test asks the casebook about its own cases. It cannot see what nobody posted, and a cause that a contributor got
          wrong counts as right here.
        </li>
        <li>
          Parts are split at random, so that neighbours of a held-out case, from the same board and the same contributor, stay in.
        </li>
      </ul>
    </>
  );
}
