'use client';

import { useId, useState } from 'react';
import { afterRepairChecks, SOAK_MINUTES } from '../../../../shared/domain/bench/after-repair';
import { bodiesOf } from '../../../../shared/domain/bench/bench-log';
import { StageMark } from '../../../_components/stage-mark';
import { StepCautions, useCautions } from './session-cautions';
import { useUnit } from './unit-context';

/** What proves the repair: the checklist and the soak time. Both become part of the case. */
export function AfterRepair() {
  const { unit, entries, words, add, say } = useUnit();
  const id = useId();
  const [minutes, setMinutes] = useState(String(SOAK_MINUTES));
  const checks = afterRepairChecks(words, unit.device, entries);
  const fullOf = useCautions(checks.map((check) => ({ key: `after ${check.slug}`, cautions: check.cautions })));
  const done = new Map(bodiesOf(entries, 'after').map(({ check, passed }) => [check, passed]));
  const soak = bodiesOf(entries, 'soak').at(-1);
  const cured = bodiesOf(entries, 'fix').at(-1)?.result === 'cured';
  const enterSoak = () => {
    const whole = Math.round(Number(minutes));
    if (!(whole >= 0 && whole <= 100_000)) return;
    add([{ kind: 'soak', minutes: whole }]);
    say('The soak time is entered.');
  };
  return (
    <details className="section after" open={cured || undefined}>
      <summary>
        <h2 id="bench-after-head">After the repair</h2>
      </summary>
      <p className="section-sub">No short before power, the voltages, what had shown the fault, every input and output; then let it run.</p>
      <ol className="rows">
        {checks.map((check) => (
          <li className="row after-row" key={check.slug}>
            <p>
              <StageMark stage={check.stage} /> <strong>{check.label}</strong>
              {done.has(check.slug) ? <span> · {done.get(check.slug) ? 'passed' : 'not passed'}</span> : null}
            </p>
            <StepCautions hazards={check.cautions} full={fullOf(`after ${check.slug}`)} />
            <div className="bench-choices">
              {[true, false].map((passed) => (
                <button
                  key={String(passed)}
                  type="button"
                  className="press"
                  aria-pressed={done.get(check.slug) === passed}
                  aria-label={`${check.label}: ${passed ? 'passed' : 'not passed'}`}
                  onClick={() => {
                    add([{ kind: 'after', check: check.slug, passed }]);
                    say(`${check.label}: ${passed ? 'passed' : 'not passed'}.`);
                  }}
                >
                  {passed ? 'Passed' : 'Not passed'}
                </button>
              ))}
            </div>
          </li>
        ))}
      </ol>
      <div className="bench-number">
        <label htmlFor={id}>Soak time, in minutes</label>
        <input
          id={id}
          type="text"
          inputMode="numeric"
          className="figure"
          maxLength={6}
          value={minutes}
          onChange={(event) => setMinutes(event.target.value.replace(/\D/g, ''))}
        />
        <button type="button" className="press" onClick={enterSoak}>
          It ran that long
        </button>
        {soak ? <span> {soak.minutes} min entered</span> : null}
      </div>
    </details>
  );
}
