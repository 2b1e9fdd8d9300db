'use client';

import { passedAfter } from '../../../../../shared/domain/bench/draft-from-log';
import { bodiesOf, pinReadings } from '../../../../../shared/domain/bench/bench-log';
import type { VocabularyWords } from '../../../../../shared/domain/casebook/vocabulary-words';
import type { BenchEntry, BenchUnit } from '../../../../../shared/schemas/bench';
import { entryWords, timeWords } from '../../_parts/entry-words';
import type { DeviceData } from '../../_parts/use-words';
import { SheetPart } from './sheet-part';

type ReportProps = { unit: BenchUnit; entries: readonly BenchEntry[]; words: VocabularyWords; data: DeviceData | null };

/** The log of a unit as a report: everything in the order of time, the readings by part, and what proved the repair. */
export function LogReport({ unit, entries, words, data }: ReportProps) {
  const board = words.devices.get(unit.device)?.board ?? null;
  const readings = pinReadings(entries);
  const parts = board?.parts.filter((part) => readings.some((r) => r.designator === part.designator)) ?? [];
  const steps = entries.filter(({ body }) => body.kind !== 'pin');
  const passed = passedAfter(entries);
  const soak = bodiesOf(entries, 'soak').at(-1);
  return (
    <article className="sheet">
      <header className="sheet-head">
        <h1>Repair log: {words.devices.get(unit.device)?.label ?? unit.device}</h1>
        <p>{unit.label}</p>
        <p>
          Begun {timeWords(unit.at)}
          {unit.closedAt === null ? '' : `, ended ${timeWords(unit.closedAt)}`}
        </p>
      </header>
      <section aria-labelledby="report-log">
        <h2 id="report-log">What was seen and done</h2>
        <table className="sheet-table">
          <thead>
            <tr>
              <th>When</th>
              <th>What</th>
              <th>It showed</th>
            </tr>
          </thead>
          <tbody>
            {steps.map((entry) => {
              const { kind, about, says } = entryWords(words, entry.body);
              return (
                <tr key={entry.id}>
                  <td className="figure">{timeWords(entry.at)}</td>
                  <td>
                    {kind}: {about}
                  </td>
                  <td>{says}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
      <section aria-labelledby="report-after">
        <h2 id="report-after">After the repair</h2>
        <p>
          {passed.length === 0
            ? 'No check after the repair is entered.'
            : `Passed: ${passed.map((check) => words.checks.get(check)?.label ?? check).join('; ')}.`}{' '}
          {soak ? `It ran for ${soak.minutes} minutes.` : 'No soak time is entered.'}
        </p>
      </section>
      {parts.map((part) => (
        <SheetPart key={part.designator} part={part} role={words.roles.get(part.role)?.label ?? part.role} data={data} readings={readings} />
      ))}
    </article>
  );
}
