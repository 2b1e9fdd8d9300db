import Form from 'next/form';
import type { PlanOptions } from '../../../shared/schemas/plan';
import { INSTRUMENTS, NEEDS, STAGES } from '../../../shared/schemas/terms';
import { planOptionPairs } from '../../_address/plan-options';
import { questionPairs, type Question } from '../../_address/question';
import { capital, INSTRUMENT_WORDS, NEED_WORDS } from '../../_components/words';

type PlanOptionsFormProps = { question: Question; options: PlanOptions };

/** What an hour is worth, how far the user will go and what is at hand; a plain GET form. */
export function PlanOptionsForm({ question, options }: PlanOptionsFormProps) {
  const struck = planOptionPairs(options).filter(([name]) => name === 'strike');
  const instruments = INSTRUMENTS.filter((name) => name !== 'none');
  // Keyed by the address: the fields follow it when the back button changes it under them.
  return (
    <details className="no-print plan-form">
      <summary>
        <span className="opens">Your time, tools and limits</span>
      </summary>
      <Form action="/plan" className="plan-options" scroll={false} key={JSON.stringify(options)}>
        {[...questionPairs(question), ...struck].map(([name, value]) => (
          <input key={`${name}=${value}`} type="hidden" name={name} value={value} />
        ))}
        <input type="hidden" name="own" value="1" />
        <label className="ask-field">
          <span>An hour of work is worth</span>
          <input
            type="number"
            name="hour"
            min="0"
            max="9999"
            step="0.01"
            inputMode="decimal"
            defaultValue={(options.hourValueCents / 100).toFixed(2)}
          />
        </label>
        <label className="ask-field">
          <span>Handing it over, or giving it up, costs</span>
          <input
            type="number"
            name="over"
            min="0"
            max="999999"
            step="0.01"
            inputMode="decimal"
            defaultValue={(options.handOverCents / 100).toFixed(2)}
          />
        </label>
        <label className="ask-field">
          <span>Go no further than</span>
          <select name="stage" defaultValue={options.maxStage}>
            {STAGES.map(({ stage, label }) => (
              <option key={stage} value={stage}>
                {stage}: {label}
              </option>
            ))}
          </select>
        </label>
        <fieldset>
          <legend>At hand</legend>
          <div className="ticks">
            {instruments.map((name) => (
              <Tick key={name} word={name} label={INSTRUMENT_WORDS[name]} ticked={options.instruments?.includes(name) ?? true} />
            ))}
            {NEEDS.map((name) => (
              <Tick key={name} word={name} label={NEED_WORDS[name]} ticked={options.needs?.includes(name) ?? true} />
            ))}
          </div>
        </fieldset>
        <button type="submit" className="press press-main">
          Make the plan again
        </button>
      </Form>
    </details>
  );
}

function Tick({ word, label, ticked }: { word: string; label: string; ticked: boolean }) {
  return (
    <label className="tick">
      <input type="checkbox" name="have" value={word} defaultChecked={ticked} /> {capital(label)}
    </label>
  );
}
