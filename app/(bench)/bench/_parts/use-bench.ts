'use client';

import { useEffect, useRef, useState } from 'react';
import { isNewer, nextClock, type Revised } from '../../../../shared/domain/bench/merge-log';
import type { BenchEntry, BenchUnit, EntryBody } from '../../../../shared/schemas/bench';
import { newDraftId } from '../../post/_parts/local-draft';
import { type BenchDb, type BenchMeta, clearBench, type Kept, openBench, readBench } from './bench-db';

type Logs = { units: Kept<BenchUnit>[]; entries: Kept<BenchEntry>[] };
type Undoable = { id: string; before: EntryBody | null; unitId: string };

export type BenchState = 'loading' | 'ready' | 'no-storage';

/** The logs of this browser, kept in IndexedDB with every change; tabs of one browser follow each other. */
export function useBench() {
  const [logs, setLogs] = useState<Logs>({ units: [], entries: [] });
  const [state, setState] = useState<BenchState>('loading');
  const latest = useRef(logs);
  const db = useRef<BenchDb | null>(null);
  const meta = useRef<BenchMeta>({ writer: '', account: null, since: 0 });
  const undoable = useRef<Undoable[]>([]);
  const tabs = useRef<BroadcastChannel | null>(null);

  const show = (next: Logs) => {
    latest.current = next;
    setLogs(next);
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page has come alive
  useEffect(() => {
    const load = async () => {
      db.current ??= await openBench();
      const { units, entries, meta: kept } = await readBench(db.current, newDraftId);
      meta.current = kept;
      show({ units, entries });
      setState('ready');
    };
    const reload = () => void load().catch(() => setState('no-storage'));
    reload();
    tabs.current = new BroadcastChannel('second-bench');
    tabs.current.addEventListener('message', reload);
    return () => tabs.current?.close();
  }, []);

  /** Writes records as they are and shows them; resolves once they are on the device. */
  const put = async ({ units = [], entries = [] }: Partial<Logs>): Promise<void> => {
    const { units: oldUnits, entries: oldEntries } = latest.current;
    show({ units: replaced(oldUnits, units), entries: replaced(oldEntries, entries) });
    if (db.current === null) return;
    const tx = db.current.transaction(['units', 'entries'], 'readwrite');
    await Promise.all([
      ...units.map((unit) => tx.objectStore('units').put(unit)),
      ...entries.map((entry) => tx.objectStore('entries').put(entry)),
      tx.done,
    ]);
    tabs.current?.postMessage('changed');
  };

  const stamp = () => ({
    clock: nextClock([...latest.current.units, ...latest.current.entries]),
    by: meta.current.writer,
    sent: false,
  });
  const entryOf = (id: string) => latest.current.entries.find((entry) => entry.id === id);

  const addUnit = (device: string, label: string, working: boolean): string => {
    const unit = { id: newDraftId(), at: Date.now(), device, label, complete: false, working, closedAt: null, deleted: false };
    void put({ units: [{ ...unit, ...stamp() }] });
    return unit.id;
  };
  const changeUnit = (id: string, over: Partial<Pick<BenchUnit, 'device' | 'label' | 'complete' | 'closedAt' | 'deleted'>>) => {
    const unit = latest.current.units.find((u) => u.id === id);
    if (unit) void put({ units: [{ ...unit, ...over, ...stamp() }] });
  };
  const add = (unitId: string, bodies: readonly EntryBody[]) => {
    const at = Date.now();
    // One millisecond apart, so that what was entered together keeps its order.
    const entries = bodies.map((body, i) => ({ id: newDraftId(), unitId, at: at + i, body, deleted: false, ...stamp() }));
    undoable.current.push(...entries.map(({ id }) => ({ id, before: null, unitId })));
    void put({ entries });
  };
  const change = (id: string, over: Partial<Pick<BenchEntry, 'body' | 'at'>>) => {
    const entry = entryOf(id);
    if (!entry) return;
    undoable.current.push({ id, before: entry.body, unitId: entry.unitId });
    void put({ entries: [{ ...entry, ...over, ...stamp() }] });
  };
  const remove = (id: string) => {
    const entry = entryOf(id);
    if (!entry) return;
    undoable.current.push({ id, before: entry.body, unitId: entry.unitId });
    void put({ entries: [{ ...entry, deleted: true, ...stamp() }] });
  };
  /** Takes back the last change of a unit's log; without one in this visit, the last entry. False where there is nothing. */
  const undo = (unitId: string): boolean => {
    const at = undoable.current.findLastIndex((step) => step.unitId === unitId);
    const [step] = at < 0 ? [] : undoable.current.splice(at, 1);
    const entry = step ? entryOf(step.id) : lastOf(latest.current.entries, unitId);
    if (!entry) return false;
    const before = step?.before ?? null;
    const over = before === null ? { deleted: true } : { deleted: false, body: before };
    void put({ entries: [{ ...entry, ...over, ...stamp() }] });
    return true;
  };
  /** Takes in what the server sent, and notes what it now has. */
  const take = async (theirs: { units: BenchUnit[]; entries: BenchEntry[] }, sent: Logs, next: Omit<BenchMeta, 'writer'>) => {
    const { units, entries } = latest.current;
    await put({ units: incoming(units, theirs.units, sent.units), entries: incoming(entries, theirs.entries, sent.entries) });
    meta.current = { ...meta.current, ...next };
    await db.current?.put('data', meta.current, 'meta');
  };
  const clear = async () => {
    if (db.current) await clearBench(db.current);
    meta.current = { writer: newDraftId(), account: null, since: 0 };
    await db.current?.put('data', meta.current, 'meta');
    undoable.current = [];
    show({ units: [], entries: [] });
    tabs.current?.postMessage('changed');
  };
  return { ...logs, latest, state, db, meta, addUnit, changeUnit, add, change, remove, undo, take, clear };
}
export type Bench = ReturnType<typeof useBench>;

function replaced<R extends { id: string }>(old: readonly R[], changed: readonly R[]): R[] {
  const by = new Map(changed.map((record) => [record.id, record]));
  const known = new Set(old.map(({ id }) => id));
  return [...old.map((record) => by.get(record.id) ?? record), ...changed.filter(({ id }) => !known.has(id))];
}

/** Records to write after an answer: theirs where newer, and mine marked as sent where nothing was changed meanwhile. */
function incoming<R extends Revised>(mine: readonly Kept<R>[], theirs: readonly R[], sent: readonly Kept<R>[]): Kept<R>[] {
  const known = new Map(mine.map((record) => [record.id, record]));
  const arrived = new Map<string, Kept<R>>();
  for (const record of sent) {
    const now = known.get(record.id);
    if (now && now.clock === record.clock && now.by === record.by) arrived.set(record.id, { ...now, sent: true });
  }
  for (const record of theirs) {
    const now = arrived.get(record.id) ?? known.get(record.id);
    if (now === undefined || isNewer(record, now)) arrived.set(record.id, { ...record, sent: true });
    else if (now.clock === record.clock && now.by === record.by) arrived.set(record.id, { ...now, sent: true });
  }
  return [...arrived.values()];
}

function lastOf(entries: readonly Kept<BenchEntry>[], unitId: string): Kept<BenchEntry> | undefined {
  return entries.filter((entry) => entry.unitId === unitId && !entry.deleted).sort((a, b) => a.at - b.at).at(-1);
}
