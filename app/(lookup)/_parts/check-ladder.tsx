import type { NextCheck } from '../../../shared/schemas/look-up';
import type { Stage } from '../../../shared/schemas/terms';
import type { Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatCount } from '../../_components/format-figures';
import { Note } from '../../_components/note';
import { StageMark, stageLabel } from '../../_components/stage-mark';
import { CheckEntry, CheckLine } from './check-entry';
import { type Unfolded, unfoldedHref } from './unfolded';

/** Checks of the first stage that stand open to the eye, the best of them in full; the rest of them is folded. */
const SHOWN_FIRST = 4;

type CheckLadderProps = { question: Question; checks: NextCheck[]; note: string | null; unfolded: Unfolded };

/** What to check next, as a ladder of stages: the iron stays on its rung while a check below it still pays. */
export function CheckLadder({ question, checks, note, unfolded: asked }: CheckLadderProps) {
  const unfolded = { ...asked, how: checks.some((check) => check.id === asked.how) ? asked.how : null };
  const stages = [...new Set(checks.map((check) => check.stage))].sort((a, b) => a - b);
  return (
    <section className="section next" aria-labelledby="next-head">
      <h2 id="next-head">Check next</h2>
      <p className="section-sub">What tells most per minute, least invasive first. Press the outcome that you found.</p>
      {checks.length > 0 ? (
        <ol className="ladder">
          {stages.map((stage, index) => (
            <Rung
              key={stage}
              stage={stage}
              held={index > 0}
              unfolded={unfolded}
              question={question}
              checks={checks.filter((check) => check.stage === stage)}
            />
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

type RungProps = { question: Question; stage: Stage; held: boolean; unfolded: Unfolded; checks: NextCheck[] };

/** One stage. The first shows its best checks; a stage that is held back stays folded until it is asked for. */
function Rung({ question, stage, held, unfolded, checks }: RungProps) {
  const { how } = unfolded;
  const shown = held ? [] : checks.slice(0, SHOWN_FIRST);
  const folded = checks.slice(shown.length);
  const open = unfolded.rung === stage || folded.some((check) => check.id === how);
  const entry = (check: NextCheck, isFirst: boolean) =>
    check.id === how || isFirst ? (
      <CheckEntry key={check.id} question={question} check={check} open={check.id === how || how === null} />
    ) : (
      <CheckLine key={check.id} check={check} href={unfoldedHref(question, { ...unfolded, how: check.id })} />
    );
  return (
    <li className="rung" id={`stage-${stage}`}>
      <h3 className="rung-head">
        <StageMark stage={stage} /> {stageLabel(stage)}
        {held ? <span className="rung-held">wait while a check above still pays</span> : null}
      </h3>
      {shown.map((check, index) => entry(check, index === 0))}
      {folded.length > 0 ? (
        <div className="folded rung-folded">
          <p className="folded-head no-print">
            <AddressLink href={`${unfoldedHref(question, { ...unfolded, how: null, rung: open ? null : stage })}#stage-${stage}`} scroll>
              {open ? 'Fold ' : ''}
              {formatCount(folded.length)} {held ? '' : 'more '}
              {folded.length === 1 ? 'check' : 'checks'}
            </AddressLink>
          </p>
          {open ? folded.map((check) => entry(check, false)) : null}
        </div>
      ) : null}
    </li>
  );
}
