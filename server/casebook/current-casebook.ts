import { upkeepAside } from '../aside/upkeep-aside';
import type { Db } from '../db';
import { findNewestReload } from '../repositories/event-log-repository';
import { getLogger } from '../watching/logger';
import { followChanges } from './follow-changes';
import { keepSnapshotFresh } from './keep-snapshot-fresh';
import { type Casebook, loadCasebook } from './load-casebook';

/** How long the casebook is used before what other programs have stored is looked for, in milliseconds. */
const FRESH_FOR = 1_000;

type Kept = {
  casebook: Promise<Casebook>;
  /** The casebook once it is loaded. */
  loaded: Casebook | null;
  checkedAt: number;
  /** The catching up under way, for whoever needs it done. */
  catchingUp: Promise<void> | null;
};

/** The bundler may load this module several times in one process; the casebook is kept once. */
const kept = globalThis as typeof globalThis & { secondBenchCasebook?: Kept };

/**
 * The process's one casebook, loaded when first asked for; a failed load is tried again next time. Every second of
 * use the change feed is looked at for what other programs have accepted or taken back, and the event log for what
 * calls for a new load, which is made beside the old casebook; that one answers until then.
 */
export function getCasebook(db: Db, now: () => number = Date.now): Promise<Casebook> {
  const current = kept.secondBenchCasebook;
  if (current === undefined) return replace(db, now());
  if (current.catchingUp === null && now() - current.checkedAt > FRESH_FOR) void catchUp(db, current, now);
  return current.casebook;
}

/**
 * Takes up at once what was stored: for whoever has just accepted, changed or taken back a case, before the answer is
 * given. Does nothing where the casebook was not asked for yet.
 */
export async function catchUpCasebook(db: Db, now: () => number = Date.now): Promise<void> {
  const current = kept.secondBenchCasebook;
  if (current === undefined) return;
  // One that is under way may have looked before this change was stored.
  await current.catchingUp;
  await catchUp(db, current, now);
}

/** How far this process's casebook is, without asking for it. */
export type CasebookState = { kind: 'absent' | 'loading' } | { kind: 'loaded'; cases: number; changeSeq: number };

/** Looks whether the casebook is in memory; asking this way loads nothing. */
export function casebookState(): CasebookState {
  const current = kept.secondBenchCasebook;
  if (current === undefined) return { kind: 'absent' };
  if (current.loaded === null) return { kind: 'loading' };
  return { kind: 'loaded', cases: current.loaded.model.entries.size, changeSeq: current.loaded.changeSeq };
}

/** Forgets the casebook, so that the next question loads it anew. */
export function forgetCasebook(): void {
  delete kept.secondBenchCasebook;
}

function replace(db: Db, at: number): Promise<Casebook> {
  const entry: Kept = { casebook: loadCasebook(db, { lazily: true }), loaded: null, checkedAt: at, catchingUp: null };
  kept.secondBenchCasebook = entry;
  entry.casebook.then(
    (casebook) => {
      entry.loaded = casebook;
      void complete(db, entry, casebook);
    },
    () => {
      if (kept.secondBenchCasebook === entry) forgetCasebook();
    },
  );
  return entry.casebook;
}

function catchUp(db: Db, current: Kept, now: () => number): Promise<void> {
  current.catchingUp ??= look(db, current).finally(() => {
    current.checkedAt = now();
    current.catchingUp = null;
  });
  return current.catchingUp;
}

async function look(db: Db, current: Kept): Promise<void> {
  try {
    const casebook = await current.casebook;
    if ((await findNewestReload(db)) === casebook.loadedFor) {
      await followChanges(db, casebook);
      void keepSnapshotFresh(db, casebook, () => upkeepAside(db, 'snapshot'));
      return;
    }
    await exchange(db, current, { lazily: true });
  } catch (error) {
    getLogger().error({ err: error }, 'The casebook could not catch up with what is stored; as it is, it goes on answering.');
  }
}

/** Loads the casebook beside the one that answers, and puts it in its place. */
async function exchange(db: Db, current: Kept, how: { lazily: boolean }): Promise<void> {
  const loaded = await loadCasebook(db, { ...how, renewAside: () => upkeepAside(db, 'snapshot') });
  if (kept.secondBenchCasebook !== current) {
    loaded.rest?.close();
    return;
  }
  current.casebook = Promise.resolve(loaded);
  current.loaded = loaded;
  void complete(db, current, loaded);
}

/**
 * Reads what the first answers did not need, then writes the snapshot where it is old. Where the file turns out to be
 * damaged, the casebook is loaded anew with every checksum looked at first; answers that need the damaged part fail until then.
 */
async function complete(db: Db, current: Kept, casebook: Casebook): Promise<void> {
  try {
    await casebook.rest?.completeSlowly();
    // It holds on to every array that the model has replaced since.
    casebook.rest = null;
    await keepSnapshotFresh(db, casebook, () => upkeepAside(db, 'snapshot'));
  } catch (error) {
    casebook.rest?.close();
    getLogger().warn({ err: error }, 'The snapshot of the casebook is damaged; the casebook is loaded anew.');
    await exchange(db, current, { lazily: false }).catch((err: unknown) => {
      getLogger().error({ err }, 'The casebook could not be loaded anew.');
    });
  }
}
