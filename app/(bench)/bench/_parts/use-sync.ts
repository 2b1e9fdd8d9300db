'use client';

import { useEffect, useRef, useState } from 'react';
import { BENCH_LIMITS, type BenchEntry, type BenchUnit } from '../../../../shared/schemas/bench';
import { plainClient } from '../../../_trpc/plain-client';
import type { Kept } from './bench-db';
import type { Bench } from './use-bench';

export type SyncState = 'here-only' | 'waiting' | 'synced' | 'offline' | 'other-account' | 'full' | 'signed-out';

const SYNC_AFTER = 1_500;
const AGAIN_AFTER = 20_000;

/** Sends what was written and takes in what other browsers wrote, whenever there is a network and an account. */
export function useSync(bench: Bench): { sync: SyncState; syncNow: () => void } {
  const [sync, setSync] = useState<SyncState>('here-only');
  const running = useRef(false);
  const timer = useRef<number | undefined>(undefined);
  const ready = bench.state === 'ready';
  const unsent = [...bench.units, ...bench.entries].filter((record) => !record.sent).length;

  const run = async (): Promise<void> => {
    if (running.current || bench.state !== 'ready') return;
    running.current = true;
    try {
      setSync(await exchange(bench));
    } catch (error) {
      setSync(stateOf(error));
    } finally {
      running.current = false;
    }
  };
  const schedule = (after: number) => {
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => void run(), after);
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: the bench is the same object's latest state
  useEffect(() => {
    if (!ready) return;
    schedule(unsent > 0 ? SYNC_AFTER : 0);
  }, [ready, unsent]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the bench is the same object's latest state
  useEffect(() => {
    if (!ready) return;
    const again = () => schedule(0);
    const offline = () => setSync((now) => (now === 'signed-out' || now === 'here-only' ? now : 'offline'));
    const regularly = window.setInterval(() => document.visibilityState === 'visible' && void run(), AGAIN_AFTER);
    window.addEventListener('online', again);
    window.addEventListener('offline', offline);
    return () => {
      window.removeEventListener('online', again);
      window.removeEventListener('offline', offline);
      window.clearInterval(regularly);
      window.clearTimeout(timer.current);
    };
  }, [ready]);
  return { sync, syncNow: () => schedule(0) };
}

/** Sends in pages until nothing is left on either side. */
async function exchange(bench: Bench): Promise<SyncState> {
  if (!navigator.onLine) return 'offline';
  const { signedIn } = await plainClient.submission.standing.query();
  if (!signedIn) return 'signed-out';
  for (let more = true; more; ) {
    const { account, since } = bench.meta.current;
    const units = bench.latest.current.units.filter((unit) => !unit.sent).slice(0, BENCH_LIMITS.units);
    const entries = bench.latest.current.entries.filter((entry) => !entry.sent).slice(0, BENCH_LIMITS.atOnce);
    const answer = await plainClient.bench.sync.mutate({ account, since, units: units.map(bare), entries: entries.map(bare) });
    await bench.take(answer, { units, entries }, { account: answer.account, since: answer.seq });
    const left = [...bench.latest.current.units, ...bench.latest.current.entries].some((record) => !record.sent);
    more = answer.more || (left && units.length + entries.length > 0);
  }
  return 'synced';
}

function bare<R extends BenchUnit | BenchEntry>({ sent: _, ...record }: Kept<R>) {
  return record as unknown as R;
}

function stateOf(error: unknown): SyncState {
  const data = typeof error === 'object' && error !== null && 'data' in error ? (error.data as { refusal?: string | null } | null) : null;
  if (data?.refusal === 'sign-in-needed') return 'signed-out';
  if (data?.refusal === 'other-account') return 'other-account';
  if (data?.refusal === 'bench-full') return 'full';
  return 'offline';
}
