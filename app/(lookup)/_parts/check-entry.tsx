import type { NextCheck } from '../../../shared/schemas/look-up';
import type { Instrument } from '../../../shared/schemas/terms';
import { withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { barScale } from '../../_components/bar-scale';
import { CautionLine, Cautions } from '../../_components/cautions';
import { formatBits, formatMinutes, formatPercent } from '../../_components/format-figures';
import { capital, INSTRUMENT_WORDS, inSentence, joinWords } from '../../_components/words';
import { Outcome } from './outcome';

type CheckEntryProps = { question: Question; check: NextCheck; open: boolean };

const RISK_WORDS = ['', 'slight risk to the unit', 'real risk to the unit'] as const;
const EFFECTS_SHOWN = 3;

/** One check: cautions first, then how it is done, then what each outcome would do to the leading causes. */
export function CheckEntry({ question, check, open }: CheckEntryProps) {
  const effects = check.outcomes.flatMap((outcome) => outcome.effect.slice(0, EFFECTS_SHOWN));
  const full = barScale(effects.flatMap((effect) => [effect.before, effect.after]));
  return (
    <details className="check" id={`check-${check.id}`} open={open}>
      <summary>
        <CheckHead check={check} />
        <span className="check-sub">
          <CheckFigures check={check} />
          <span className="opens no-print">
            <span className="opens-closed">how, and what it tells</span>
            <span className="opens-open">fold</span>
          </span>
        </span>
      </summary>
      <div className="check-body">
        <Cautions hazards={check.cautions} />
        <p>{check.howTo}</p>
        <p className="check-facts">{factWords(check)}</p>
        <ul className="outcomes">
          {check.outcomes.map(({ value, label, probability, effect }) => (
            <Outcome
              key={value}
              href={`${questionHref('/', withFinding(question, { kind: 'check', id: check.id, value }))}#answer`}
              found={inSentence(label)}
              probability={probability}
              effects={effect.slice(0, EFFECTS_SHOWN)}
              full={full}
            />
          ))}
        </ul>
        <Key full={full} />
      </div>
    </details>
  );
}

/**
 * One check that is not the next: a line that leads to the same page with the check in full.
 *
 * @param href address of that page.
 */
export function CheckLine({ check, href }: { check: NextCheck; href: string }) {
  return (
    <div className="check" id={`check-${check.id}`}>
      <div className="check-line">
        <CheckHead check={check} />
        <span className="check-sub">
          <CheckFigures check={check} />
          <AddressLink href={`${href}#check-${check.id}`} scroll className="no-print" label={`How to do it, and what it tells: ${check.label}`}>
            how, and what it tells
          </AddressLink>
        </span>
      </div>
    </div>
  );
}

function CheckHead({ check }: { check: NextCheck }) {
  return (
    <>
      <span className="check-name">{capital(check.label)}</span>
      <span className="figure">{formatMinutes(check.minutes)}</span>
    </>
  );
}

function CheckFigures({ check }: { check: NextCheck }) {
  return (
    <>
      <CautionLine hazards={check.cautions} />
      <span className="figure">
        {formatBits(check.bits)} · {formatBits(check.bitsPerMinute)}/min
      </span>
    </>
  );
}

function factWords(check: NextCheck): string {
  const instruments = check.instruments
    .filter((name) => name !== 'none')
    .map((name) => INSTRUMENT_WORDS[name as Instrument] ?? name);
  const needs = instruments.length > 0 ? `Needs: ${joinWords(instruments)}.` : 'Needs no instrument.';
  return check.risk === 0 ? needs : `${needs} ${capital(RISK_WORDS[check.risk])}.`;
}

/** What the two bars of a pair stand for. */
function Key({ full }: { full: number }) {
  return (
    <p className="key">
      <span>
        <svg width="26" height="8" aria-hidden="true" focusable="false">
          <rect className="bar-open" x="0" y="1" width="24" height="6" />
        </svg>
        now
      </span>
      <span>
        <svg width="26" height="8" aria-hidden="true" focusable="false">
          <rect className="bar" x="0" y="0" width="24" height="8" />
        </svg>
        after this outcome
      </span>
      <span>full width: {formatPercent(full)}</span>
    </p>
  );
}
