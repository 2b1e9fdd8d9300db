'use client';

import { FIX_RESULTS } from '../../../../shared/schemas/case';
import { type DraftCheck, type DraftFix, type DraftStep, SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { capital, FIX_RESULT_WORDS, joinWords } from '../../../_components/words';
import { RemoveIcon } from '../../../_components/icons';
import { EntryBox } from './entry-box';
import { Asked, Fault, Field } from './field';
import { fieldId, useForm } from './form-context';

type StepRowProps = { step: DraftStep; index: number; last: boolean };

/** One check or attempt, with what it showed, and its place in the order. */
export function StepRow({ step, index, last }: StepRowProps) {
  const { update, words, announce } = useForm();
  const name =
    step.kind === 'check'
      ? (words.checks.get(step.check)?.label ?? step.check)
      : joinWords(step.fixes.map(({ fix }) => words.fixes.get(fix)?.label ?? fix));
  const move = (by: -1 | 1) => {
    update((now) => {
      const steps = [...now.steps];
      const [row] = steps.splice(index, 1);
      if (row) steps.splice(index + by, 0, row);
      return { ...now, steps };
    });
    announce(`${name} is now step ${index + 1 + by}.`);
  };
  const remove = () => {
    update((now) => ({
      ...now,
      steps: now.steps.filter((other) => other.key !== step.key),
      provedBy: now.provedBy === step.key ? '' : now.provedBy,
    }));
    announce(`${name} is removed.`);
    window.document.getElementById(fieldId('step-box'))?.focus();
  };
  return (
    <li className="post-row" id={fieldId(`steps.${index}`)}>
      <p className="post-row-name">
        <span className="step-number">{index + 1}</span> {step.kind === 'check' ? 'Check' : 'Fix'}: <strong>{name}</strong>
      </p>
      <Asked field={`steps.${index}`} />
      {step.kind === 'check' ? (
        <CheckFields step={step} at={`steps.${index}`} />
      ) : (
        <FixFields step={step} at={`steps.${index}`} />
      )}
      <div className="post-row-keys">
        <button type="button" className="press press-small" disabled={index === 0} onClick={() => move(-1)}>
          Earlier<span className="sr-only">: {name}</span>
        </button>
        <button type="button" className="press press-small" disabled={last} onClick={() => move(1)}>
          Later<span className="sr-only">: {name}</span>
        </button>
        <button type="button" className="press press-small" onClick={remove}>
          <RemoveIcon /> Remove<span className="sr-only">: {name}</span>
        </button>
      </div>
    </li>
  );
}

/** Changes one step of the form, found by its key. */
function useChange<S extends DraftStep>(step: S) {
  const { update } = useForm();
  return (over: Partial<S>) =>
    update((now) => ({
      ...now,
      steps: now.steps.map((other) => (other.key === step.key ? ({ ...other, ...over } as DraftStep) : other)),
    }));
}

function CheckFields({ step, at }: { step: DraftCheck; at: string }) {
  const { words } = useForm();
  const change = useChange(step);
  const check = words.checks.get(step.check);
  const rule = check?.rule;
  return (
    <div className="post-row-fields">
      <Field field={`${at}.outcome`} label="It showed">
        {(tie) => (
          <select {...tie} value={step.outcome} onChange={(e) => change({ outcome: e.target.value })}>
            <option value="">{rule ? 'Choose, or give the number' : 'Choose'}</option>
            {check?.outcomes.map((outcome) => (
              <option key={outcome.slug} value={outcome.slug}>
                {outcome.label}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field field={`${at}.reading`} label={`Number${rule ? `, in ${rule.unit}` : ' with its unit'}, if you took one`}>
        {(tie) => (
          <input
            {...tie}
            type="text"
            className="figure"
            autoComplete="off"
            maxLength={SUBMISSION_LIMITS.short}
            value={step.reading}
            onChange={(e) => change({ reading: e.target.value })}
          />
        )}
      </Field>
      <Designator field={`${at}.designator`} value={step.designator} onChange={(designator) => change({ designator })} />
      <Fault field={`${at}.check`} />
    </div>
  );
}

function FixFields({ step, at }: { step: DraftFix; at: string }) {
  const { words } = useForm();
  const change = useChange(step);
  const name = (fix: string) => words.fixes.get(fix)?.label ?? fix;
  return (
    <>
      <div className="post-row-fields">
        <Field field={`${at}.result`} label="Result">
          {(tie) => (
            <select {...tie} value={step.result} onChange={(e) => change({ result: e.target.value as DraftFix['result'] })}>
              <option value="">Choose</option>
              {FIX_RESULTS.map((result) => (
                <option key={result} value={result}>
                  {capital(FIX_RESULT_WORDS[result])}
                </option>
              ))}
            </select>
          )}
        </Field>
        {step.fixes.map((fix, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same fix can stand here for two parts
          <div key={`${fix.fix} ${i}`}>
            <Designator
              field={`${at}.fixes.${i}.designator`}
              label={step.fixes.length > 1 ? `Part, ${name(fix.fix)}` : undefined}
              value={fix.designator}
              onChange={(designator) =>
                change({ fixes: step.fixes.map((other, j) => (j === i ? { ...other, designator } : other)) })
              }
            />
            <Fault field={`${at}.fixes.${i}.fix`} />
            {step.fixes.length > 1 ? (
              <button
                type="button"
                className="press press-small"
                onClick={() => change({ fixes: step.fixes.filter((_, j) => j !== i) })}
              >
                <RemoveIcon /> Not this one<span className="sr-only">: {name(fix.fix)}</span>
              </button>
            ) : null}
          </div>
        ))}
      </div>
      {step.fixes.length < SUBMISSION_LIMITS.fixesAtOnce ? (
        <details className="post-more">
          <summary>Something else at the same time</summary>
          <EntryBox
            id={fieldId(`${at}.more`)}
            label="Fix done together with it"
            kinds={['fix']}
            onChoose={(entry) => change({ fixes: [...step.fixes, { fix: entry.id, designator: '' }] })}
          />
        </details>
      ) : null}
    </>
  );
}

type DesignatorProps = { field: string; label?: string | undefined; value: string; onChange: (value: string) => void };

function Designator({ field, label = 'Part, as on the board', value, onChange }: DesignatorProps) {
  return (
    <Field field={field} label={label}>
      {(tie) => (
        <input
          {...tie}
          type="text"
          className="figure"
          autoCapitalize="characters"
          autoComplete="off"
          list="post-parts"
          maxLength={SUBMISSION_LIMITS.short}
          value={value}
          onChange={(e) => onChange(e.target.value)}
        />
      )}
    </Field>
  );
}
