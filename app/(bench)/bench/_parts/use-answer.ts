'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import type { BenchAnswer, BenchQuestion } from '../../../../shared/domain/bench/answer-bench';
import type { CasebookWords } from '../../../../shared/domain/snapshot/casebook-snapshot';
import { type PlanOptions, planOptionsSchema, type PlanResult } from '../../../../shared/schemas/plan';
import type { DeviceData } from './use-words';
import type { FromWorker, ReadText, ToWorker } from './worker-messages';

export type Answers = {
  answer: BenchAnswer | null;
  plan: PlanResult | null;
  /** Whether the plan is the one in full for what was entered last. */
  planned: boolean;
  told: string | null;
};

const OPTIONS: PlanOptions = planOptionsSchema.parse({});

/** Asks the worker anew with every entry; the last answer stays until the next is there. */
export function useAnswer(words: CasebookWords | null, device: DeviceData | null, question: BenchQuestion | null) {
  const worker = useRef<Worker | null>(null);
  const asked = useRef(0);
  const readers = useRef(new Map<number, (read: ReadText) => void>());
  const [answers, setAnswers] = useState<Answers>({ answer: null, plan: null, planned: false, told: null });
  const key = question === null ? '' : JSON.stringify(question);

  useEffect(() => {
    const started = new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module' });
    worker.current = started;
    started.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (data.kind === 'read') {
        readers.current.get(data.id)?.(data.read);
        readers.current.delete(data.id);
      } else if (data.id === asked.current) {
        if (data.kind !== 'trouble') performance.measure(`bench ${data.kind}`, { start: performance.now() - data.ms, duration: data.ms });
        if (data.kind === 'answer') {
          setAnswers((now) => ({ ...now, answer: data.answer, told: null }));
        } else if (data.kind === 'plan') setAnswers((now) => ({ ...now, plan: data.plan, planned: data.final }));
        else setAnswers((now) => ({ ...now, told: data.told }));
      }
    });
    return () => started.terminate();
  }, []);

  const tell = useCallback((message: ToWorker) => worker.current?.postMessage(message), []);
  useEffect(() => {
    if (words) tell({ kind: 'words', words });
  }, [words, tell]);
  useEffect(() => {
    if (words && device) tell({ kind: 'snapshot', snapshot: device.casebook });
  }, [words, device, tell]);
  useEffect(() => {
    if (!words || !device || key === '') return;
    asked.current += 1;
    setAnswers((now) => ({ ...now, planned: false }));
    tell({ kind: 'ask', id: asked.current, question: JSON.parse(key) as BenchQuestion, options: OPTIONS });
  }, [words, device, key, tell]);

  /** Reads words into findings, in the worker. */
  const read = useCallback(
    (text: string) =>
      new Promise<ReadText>((resolve) => {
        const id = Math.floor(performance.now() * 1000);
        readers.current.set(id, resolve);
        tell({ kind: 'read', id, text });
      }),
    [tell],
  );
  return { ...answers, read };
}
