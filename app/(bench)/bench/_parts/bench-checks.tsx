'use client';

import type { BenchAnswer } from '../../../../shared/domain/bench/answer-bench';
import type { NextCheck } from '../../../../shared/schemas/look-up';
import { formatBits, formatMinutes, formatPercent } from '../../../_components/format-figures';
import { StageMark, stageLabel } from '../../../_components/stage-mark';
import { capital } from '../../../_components/words';
import { CheckResult } from './check-result';
import { StepCautions, useCautions } from './session-cautions';
import { useUnit } from './unit-context';

const SHOWN = 5;

/** What to check next: cautions first, then how, then one press for what it showed. */
export function BenchChecks({ answer }: { answer: BenchAnswer }) {
  const shown = answer.nextChecks.slice(0, SHOWN);
  const fullOf = useCautions(shown.map((check) => ({ key: `check ${check.id}`, cautions: check.cautions })));
  return (
    <section className="section" aria-labelledby="bench-checks-head">
      <h2 id="bench-checks-head">Next checks</h2>
      {answer.note ? <p className="note">{answer.note}</p> : null}
      {shown.length === 0 ? <p className="soft">No check that is left tells enough to be worth its time.</p> : null}
      <ol className="rows">
        {shown.map((check, i) => (
          <li className="row" key={check.id}>
            <BenchCheck check={check} full={fullOf(`check ${check.id}`)} open={i === 0} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function BenchCheck({ check, full, open }: { check: NextCheck; full: ReturnType<ReturnType<typeof useCautions>>; open: boolean }) {
  const { words, add, say } = useUnit();
  const entry = words.checks.get(check.id);
  if (!entry) return null;
  return (
    <details className="check" open={open}>
      <summary>
        <span className="check-name">{check.label}</span>
        <StageMark stage={check.stage} />
        <span className="check-sub">
          {stageLabel(check.stage)} · {formatMinutes(check.minutes)} · {formatBits(check.bits)}
        </span>
      </summary>
      <div className="check-body">
        <StepCautions hazards={check.cautions} full={full} />
        <p>{check.howTo}</p>
        <CheckResult
          check={entry}
          chances={new Map(check.outcomes.map((o) => [o.value, formatPercent(o.probability)]))}
          onShown={(outcome, reading) => {
            add([{ kind: 'check', check: check.id, outcome, designator: '', reading }]);
            say(`${capital(check.label)} is entered. The next checks and the causes are new.`);
          }}
        />
      </div>
    </details>
  );
}
