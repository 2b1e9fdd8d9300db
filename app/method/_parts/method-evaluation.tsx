import { z } from 'zod';
import { formatCount, formatPercent } from '../../_components/format-figures';

const scores = z.object({
  estimator: z.string(),
  accuracy: z.number(),
  top3: z.number(),
  logLoss: z.number(),
  brier: z.number(),
  ece: z.number(),
});
const document = z.object({
  rows: z.number(),
  folds: z.number(),
  repeats: z.number(),
  cuts: z.array(z.object({ cut: z.string(), results: z.array(scores) })),
});

type MethodEvaluationProps = { evaluation: { at: string; result: unknown } | null };

/** Whether the figures tell the truth: the latest evaluation of the casebook, or how to run one. */
export function MethodEvaluation({ evaluation }: MethodEvaluationProps) {
  const parsed = evaluation === null ? null : document.safeParse(evaluation.result);
  return (
    <>
      <h2>Does it tell the truth?</h2>
      <p>
        The casebook can be put to the test: parts of it are held out, the model is made again without them, and each case that
        was held out is predicted as far as it was known at several points of its repair.
      </p>
      {parsed?.success ? (
        <EvaluationTables evaluation={parsed.data} />
      ) : (
        <p>
          No such test of this casebook is on record. <code className="figure">npm run cli -- evaluate</code> runs one.
        </p>
      )}
    </>
  );
}

function EvaluationTables({ evaluation }: { evaluation: z.infer<typeof document> }) {
  return (
    <>
      <p>
        The latest test: {formatCount(evaluation.rows)} cases in {evaluation.folds} parts, {evaluation.repeats} times over. Log
        loss and Brier score are better when smaller; the calibration error says how far stated chances and frequencies lie apart.
      </p>
      {evaluation.cuts.map(({ cut, results }) => (
        <table className="plain-table" key={cut}>
          <caption>
            What was known: <strong>{cut}</strong>
          </caption>
          <thead>
            <tr>
              <th scope="col">Model</th>
              <th scope="col">First right</th>
              <th scope="col">In first three</th>
              <th scope="col">Log loss</th>
              <th scope="col">Brier</th>
              <th scope="col">Calibration error</th>
            </tr>
          </thead>
          <tbody>
            {results.map((row) => (
              <tr key={row.estimator}>
                <th scope="row">{row.estimator}</th>
                <td className="figure">{formatPercent(row.accuracy)}</td>
                <td className="figure">{formatPercent(row.top3)}</td>
                <td className="figure">{row.logLoss.toFixed(2)}</td>
                <td className="figure">{row.brier.toFixed(2)}</td>
                <td className="figure">{row.ece.toFixed(3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </>
  );
}
