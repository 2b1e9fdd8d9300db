'use client';

import { useMemo, useState } from 'react';
import { findingsOf, standing } from '../../../../shared/domain/bench/bench-log';
import { vocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { CasebookWords } from '../../../../shared/domain/snapshot/casebook-snapshot';
import type { BenchUnit } from '../../../../shared/schemas/bench';
import { AfterRepair } from './after-repair';
import { BenchCauses } from './bench-causes';
import { BenchChecks } from './bench-checks';
import { BenchPlan } from './bench-plan';
import { Finish } from './finish';
import { LogBox } from './log-box';
import { LogList } from './log-list';
import { PartReadings } from './part-readings';
import { UnitProvider } from './unit-context';
import { useAnswer } from './use-answer';
import type { Bench } from './use-bench';
import { useDevice } from './use-words';

type UnitViewProps = { bench: Bench; unit: BenchUnit; casebook: CasebookWords; onLeave: () => void };

/** One open unit: its log, and beside it what the casebook makes of everything entered so far. */
export function UnitView({ bench, unit, casebook, onLeave }: UnitViewProps) {
  const [said, setSaid] = useState('');
  const words = useMemo(() => vocabularyWords(casebook.vocabulary, casebook.catalogue), [casebook]);
  const entries = useMemo(() => standing(bench.entries, unit.id), [bench.entries, unit.id]);
  const device = useDevice(bench.db, unit.device);
  const findings = useMemo(() => findingsOf(entries), [entries]);
  const question = unit.working ? null : { device: unit.device, complete: unit.complete, findings };
  const { answer, plan, planned, told, read } = useAnswer(casebook, device.value, question);
  const board = words.devices.get(unit.device)?.board ?? null;
  const parts = {
    unit,
    entries,
    words,
    board,
    partsOf: (role: string) => (board?.parts ?? []).filter((part) => part.role === role).map((part) => part.designator),
    add: (bodies: Parameters<Bench['add']>[1]) => bench.add(unit.id, bodies),
    change: bench.change,
    remove: bench.remove,
    say: setSaid,
  };
  return (
    <UnitProvider value={parts}>
      <div className={unit.working ? 'bench-unit' : 'bench-unit bench-columns'} data-unit={unit.id}>
        <div className="bench-log">
          <section className="section" aria-labelledby="bench-log-head">
            <h2 id="bench-log-head">
              {words.devices.get(unit.device)?.label ?? unit.device}
              {unit.label ? `, ${unit.label}` : ''}
            </h2>
            {unit.working ? null : <LogBox read={read} />}
            {unit.working ? null : (
              <label className="tick">
                <input type="checkbox" checked={unit.complete} onChange={(e) => bench.changeUnit(unit.id, { complete: e.target.checked })} />
                <span>
                  That is all I see <span className="soft">(what is not entered is absent)</span>
                </span>
              </label>
            )}
            <p className="bench-keys">
              <button
                type="button"
                className="press press-small"
                onClick={() => setSaid(bench.undo(unit.id) ? 'The last change is undone.' : 'There is nothing to undo.')}
              >
                Undo
              </button>
            </p>
            <LogList />
          </section>
        </div>
        {unit.working ? null : (
          <div className="bench-answer">
            {told ? <p className="bench-told">The casebook could not answer in this browser: {told}</p> : null}
            {answer ? (
              <>
                <BenchChecks answer={answer} />
                <BenchCauses answer={answer} />
                <BenchPlan plan={plan} planned={planned} />
              </>
            ) : (
              <Waiting missing={device.missing} />
            )}
            <AfterRepair />
          </div>
        )}
        <div className="bench-pins">
          <section className="section" aria-labelledby="bench-pins-head">
            <h2 id="bench-pins-head">Readings at a part</h2>
            {device.value ? <PartReadings data={device.value} /> : <Waiting missing={device.missing} />}
          </section>
        </div>
      </div>
      <Finish
        onClose={(closed) => bench.changeUnit(unit.id, { closedAt: closed ? Date.now() : null })}
        onRemove={() => {
          bench.changeUnit(unit.id, { deleted: true });
          onLeave();
        }}
      />
      <p className="sr-only" role="status">
        {said}
      </p>
    </UnitProvider>
  );
}

function Waiting({ missing }: { missing: boolean }) {
  return missing ? (
    <p className="note">This device was never opened with a network, so this browser cannot answer for it yet. Entries are kept all the same.</p>
  ) : (
    <p className="soft">Fetching what the casebook knows of this device.</p>
  );
}
