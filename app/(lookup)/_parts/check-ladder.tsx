import type { NextCheck } from '../../../shared/schemas/look-up';
import type { Stage } from '../../../shared/schemas/terms';
import type { Question } from '../../_address/question';
import { Note } from '../../_components/note';
import { StageMark, stageLabel } from '../../_components/stage-mark';
import { CheckEntry } from './check-entry';

type CheckLadderProps = { question: Question; checks: NextCheck[]; note: string | null };

/** What to check next, as a ladder of stages: the iron stays on its rung while a check below it still pays. */
export function CheckLadder({ question, checks, note }: CheckLadderProps) {
  const stages = [...new Set(checks.map((check) => check.stage))].sort((a, b) => a - b);
  const first = checks[0];
  return (
    <section className="section next" aria-labelledby="next-head">
      <h2 id="next-head">Check next</h2>
      <p className="section-sub">What tells most per minute, least invasive first. Press the outcome that you found.</p>
      {checks.length > 0 ? (
        <ol className="ladder">
          {stages.map((stage, index) => (
            <Rung key={stage} stage={stage} held={index > 0}>
              {checks
                .filter((check) => check.stage === stage)
                .map((check) => (
                  <CheckEntry key={check.id} question={question} check={check} open={check === first} />
                ))}
            </Rung>
          ))}
        </ol>
      ) : null}
      {note ? (
        <div className="stops">
          <Note kind="remark">{note}</Note>
        </div>
      ) : null}
    </section>
  );
}

function Rung({ stage, held, children }: { stage: Stage; held: boolean; children: React.ReactNode }) {
  return (
    <li className="rung">
      <h3 className="rung-head">
        <StageMark stage={stage} /> {stageLabel(stage)}
        {held ? <span className="rung-held">wait while a check above still pays</span> : null}
      </h3>
      {children}
    </li>
  );
}
