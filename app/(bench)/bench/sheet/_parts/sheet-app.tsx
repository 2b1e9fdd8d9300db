'use client';

import { useEffect, useMemo, useState } from 'react';
import { findingsOf, standing } from '../../../../../shared/domain/bench/bench-log';
import { vocabularyWords } from '../../../../../shared/domain/casebook/vocabulary-words';
import { useAnswer } from '../../_parts/use-answer';
import { useBench } from '../../_parts/use-bench';
import { useOffline } from '../../_parts/use-offline';
import { useDevice, useWords } from '../../_parts/use-words';
import { BenchSheet } from './bench-sheet';
import { LogReport } from './log-report';

/** The unit that the address names, on paper: what is to do next, or what was done. */
export function SheetApp() {
  const bench = useBench();
  const casebook = useWords(bench.db, bench.state !== 'loading');
  const [asked, setAsked] = useState<{ unit: string | null; report: boolean }>({ unit: null, report: false });
  useOffline();
  useEffect(() => {
    const params = new URLSearchParams(window.location.search);
    setAsked({ unit: params.get('unit'), report: params.get('of') === 'report' });
  }, []);
  const unit = bench.units.find((u) => u.id === asked.unit && !u.deleted) ?? null;
  const words = useMemo(() => (casebook.value ? vocabularyWords(casebook.value.vocabulary, casebook.value.catalogue) : null), [casebook.value]);
  const device = useDevice(bench.db, unit?.device ?? null);
  const entries = useMemo(() => (unit ? standing(bench.entries, unit.id) : []), [bench.entries, unit]);
  const question = unit && !unit.working ? { device: unit.device, complete: unit.complete, findings: findingsOf(entries) } : null;
  const { answer } = useAnswer(casebook.value, device.value, question);
  if (bench.state === 'loading' || (words === null && !casebook.missing)) return <p className="soft">Opening the bench.</p>;
  if (unit === null || words === null) {
    return (
      <p className="note">
        This browser has no such log. <a href="/bench">Back to the bench</a>
      </p>
    );
  }
  return (
    <>
      <p className="no-print bench-keys">
        <a className="press" href={`/bench?unit=${unit.id}`}>
          Back to the bench
        </a>
        <button type="button" className="press press-main" onClick={() => window.print()}>
          Print, or save as PDF
        </button>
      </p>
      {asked.report ? (
        <LogReport unit={unit} entries={entries} words={words} data={device.value} />
      ) : (
        <BenchSheet unit={unit} entries={entries} words={words} data={device.value} answer={answer} />
      )}
    </>
  );
}
