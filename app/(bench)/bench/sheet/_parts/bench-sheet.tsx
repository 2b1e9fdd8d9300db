'use client';

import { useState } from 'react';
import type { BenchAnswer } from '../../../../../shared/domain/bench/answer-bench';
import { pinReadings } from '../../../../../shared/domain/bench/bench-log';
import type { VocabularyWords } from '../../../../../shared/domain/casebook/vocabulary-words';
import type { BenchEntry, BenchUnit } from '../../../../../shared/schemas/bench';
import type { Hazard } from '../../../../../shared/schemas/terms';
import { CautionLine, Cautions } from '../../../../_components/cautions';
import { formatMinutes, formatPercent } from '../../../../_components/format-figures';
import { StageMark } from '../../../../_components/stage-mark';
import { capital } from '../../../../_components/words';
import type { DeviceData } from '../../_parts/use-words';
import { SheetPart } from './sheet-part';

type SheetProps = {
  unit: BenchUnit;
  entries: readonly BenchEntry[];
  words: VocabularyWords;
  data: DeviceData | null;
  answer: BenchAnswer | null;
};

const CAUSES = 5;

/** What to take to the bench on paper: the unit, the next checks with boxes, pins with what is usual, cautions in full once. */
export function BenchSheet({ unit, entries, words, data, answer }: SheetProps) {
  const board = words.devices.get(unit.device)?.board ?? null;
  const read = [...new Set(pinReadings(entries).map((r) => r.designator))];
  const [parts, setParts] = useState<readonly string[]>([]);
  const shown = board?.parts.filter((part) => read.includes(part.designator) || parts.includes(part.designator)) ?? [];
  const checks = answer?.nextChecks ?? [];
  const hazards = [...new Set(checks.flatMap((check) => check.cautions))] as Hazard[];
  return (
    <article className="sheet">
      <header className="sheet-head">
        <h1>Bench sheet: {words.devices.get(unit.device)?.label ?? unit.device}</h1>
        <p>{unit.label}</p>
        <p>Date: ______________</p>
      </header>
      <p>
        Mains-side and picture-tube work is for licensed or qualified people, under your local codes. What stands here is shared
        experience, not a certified procedure.
      </p>
      {hazards.length > 0 ? (
        <section aria-labelledby="sheet-cautions">
          <h2 id="sheet-cautions">Before you begin</h2>
          <Cautions hazards={hazards} />
        </section>
      ) : null}
      {answer ? (
        <section aria-labelledby="sheet-causes">
          <h2 id="sheet-causes">Likely causes</h2>
          <p>
            {answer.causes
              .slice(0, CAUSES)
              .map((cause) => `${capital(cause.label)} ${formatPercent(cause.probability)}`)
              .join('; ')}
            ; none on record {formatPercent(answer.unlisted.probability)}. From {answer.cases.matching} matching cases of{' '}
            {answer.cases.total}; modelled, and the cases are volunteered.
          </p>
        </section>
      ) : null}
      {checks.length > 0 ? (
        <section aria-labelledby="sheet-checks">
          <h2 id="sheet-checks">Next checks</h2>
          {checks.map((check) => (
            <div className="sheet-check" key={check.id}>
              <h3 className="sheet-box">
                <StageMark stage={check.stage} /> {check.label}{' '}
                <span className="soft small">{formatMinutes(check.minutes)}</span>
              </h3>
              <CautionLine hazards={check.cautions} />
              <p>{check.howTo}</p>
              <ul className="sheet-boxes">
                {check.outcomes.map((outcome) => (
                  <li key={outcome.value}>
                    {outcome.label} <span className="soft small">{formatPercent(outcome.probability)}</span>
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </section>
      ) : null}
      {board ? (
        <fieldset className="no-print">
          <legend>Parts to print with their pins</legend>
          <ul className="sheet-choose">
            {board.parts
              .filter((part) => part.pins >= 4)
              .map((part) => (
                <li key={part.designator}>
                  <label className="tick">
                    <input
                      type="checkbox"
                      checked={shown.includes(part)}
                      disabled={read.includes(part.designator)}
                      onChange={(event) =>
                        setParts((now) => (event.target.checked ? [...now, part.designator] : now.filter((d) => d !== part.designator)))
                      }
                    />
                    <span>
                      {part.designator} {words.roles.get(part.role)?.label ?? part.role}
                    </span>
                  </label>
                </li>
              ))}
          </ul>
        </fieldset>
      ) : null}
      {shown.map((part) => (
        <SheetPart key={part.designator} part={part} role={words.roles.get(part.role)?.label ?? part.role} data={data} readings={pinReadings(entries)} />
      ))}
    </article>
  );
}
