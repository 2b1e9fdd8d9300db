'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { vocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import type { Finding } from '../../../../shared/schemas/finding';
import { bodyOf } from './log-box';
import { NewUnit } from './new-unit';
import { SyncLine } from './sync-line';
import { UnitList } from './unit-list';
import { UnitView } from './unit-view';
import { useBench } from './use-bench';
import { useOffline } from './use-offline';
import { useSync } from './use-sync';
import { useWords } from './use-words';

/** What a look-up hands over to begin a log with. */
export type BenchStart = { device: string | null; complete: boolean; findings: Finding[]; notes: string[] };

/** The bench: the units on it, and the one that is open. All of it works without a network. */
export function BenchApp({ start }: { start: BenchStart | null }) {
  const bench = useBench();
  const { sync } = useSync(bench);
  const casebook = useWords(bench.db, bench.state !== 'loading');
  const words = useMemo(() => (casebook.value ? vocabularyWords(casebook.value.vocabulary, casebook.value.catalogue) : null), [casebook.value]);
  const [open, setOpen] = useState<string | null>(null);
  useOffline();
  const units = bench.units.filter((unit) => !unit.deleted);
  const unit = units.find(({ id }) => id === open) ?? null;

  const show = (id: string | null) => {
    setOpen(id);
    window.history.replaceState(null, '', id === null ? '/bench' : `/bench?unit=${id}`);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the logs are there
  useEffect(() => {
    if (bench.state === 'loading') return;
    const named = new URLSearchParams(window.location.search).get('unit');
    if (named !== null) setOpen(named);
  }, [bench.state]);

  const begun = useRef(false);
  const begin = (device: string, label: string, working: boolean) => {
    const id = bench.addUnit(device, label, working);
    if (start && !begun.current && !working) {
      begun.current = true;
      bench.add(id, [...start.findings.map(bodyOf), ...start.notes.map((text) => ({ kind: 'note' as const, text }))]);
      if (start.complete) bench.changeUnit(id, { complete: true });
    }
    show(id);
  };

  if (bench.state === 'loading') return <p className="soft">Opening the bench.</p>;
  const unsent = [...bench.units, ...bench.entries].filter((record) => !record.sent).length;
  return (
    <div className="bench" data-ready={casebook.value !== null}>
      {bench.state === 'no-storage' ? (
        <p className="note">This browser keeps nothing: what you enter is lost when the page is closed. Allow it to store data for this site.</p>
      ) : null}
      {casebook.missing ? (
        <p className="note" role="alert">
          The bench was never opened with a network in this browser, so it does not have the words yet. Open it once while you are connected.
        </p>
      ) : null}
      {words && casebook.value ? (
        <>
          <UnitList units={units} words={words} open={open} onOpen={show} />
          <details className="bench-new no-print" open={unit === null}>
            <summary className="press">{start && !begun.current ? 'Start a log with this look-up' : 'Another unit'}</summary>
            <NewUnit key={start?.device ?? ''} catalogue={casebook.value.catalogue} device={start?.device ?? null} onNew={begin} />
          </details>
          {unit ? <UnitView key={unit.id} bench={bench} unit={unit} casebook={casebook.value} onLeave={() => show(null)} /> : null}
        </>
      ) : casebook.missing ? null : (
        <p className="soft">Fetching the words of the casebook.</p>
      )}
      <SyncLine state={sync} unsent={unsent} onClear={bench.clear} />
    </div>
  );
}
