import type { EngineName, SearchQuery, SearchResult } from '../../shared/schemas/search';
import type { Db } from '../db';
import { keptDocumentSource } from './document-source';
import { catchUpIndex, rebuildIndex } from './index-upkeep';
import type { SearchEngine } from './search-engine';
import { isBusy } from './sqlite/index-file';
import { storageFaultOf } from '../storage/storage-fault';

/** After the first engine failed, how long the second one answers before it is tried again, in milliseconds. */
const REST_MS = 5_000;

export type CaseSearchOptions = {
  db: Db;
  /** Always there, always kept up: it answers where the other one cannot. */
  local: SearchEngine;
  /** The engine that takes over where it is configured and can be reached. */
  remote: SearchEngine | null;
  now: () => number;
  /** Told once each time that the remote engine stops answering. */
  onTrouble: (error: unknown) => void;
  /** Makes the local index anew where nobody has to wait for it; false where it could not, so that it is done here. */
  rebuildAside?: () => Promise<boolean>;
};

/** Searching, and keeping what is searched up to date. */
export type CaseSearch = {
  /** The engines that are set up here, the local one first. */
  engines: readonly EngineName[];
  /** Finds cases. The local index is brought up to date first where it can be written and is not just being made anew elsewhere; `fellBack` says that the remote one could not answer. */
  search(query: SearchQuery): Promise<SearchResult & { fellBack: boolean }>;
  /** Takes in everything that has changed, in both indexes; never rejects for the remote one. */
  catchUp(): Promise<void>;
  /** Makes one index anew, whatever state it is in. */
  reindex(engine: EngineName, onProgress?: (done: number) => void): Promise<void>;
  close(): Promise<void>;
};

export function createCaseSearch({ db, local, remote, now, onTrouble, rebuildAside }: CaseSearchOptions): CaseSearch {
  const source = keptDocumentSource(db);
  const alone = inTurn();
  /** Whether a new local index is being made elsewhere; the old one goes on answering until it is there. */
  let isAside = false;
  const aside = rebuildAside && (async () => {
    isAside = (await local.state()) !== null;
    return rebuildAside().finally(() => {
      isAside = false;
    });
  });
  const localUpkeep = oneAtATime(() =>
    alone(async () => catchUpIndex({ db, engine: local, source: await source(), ...(aside && { rebuildAside: aside }) })),
  );
  const remoteUpkeep = remote === null ? null : oneAtATime(async () => catchUpIndex({ db, engine: remote, source: await source() }));
  let restUntil = 0;
  let isReady = false;

  const failed = (error: unknown) => {
    if (now() >= restUntil) onTrouble(error);
    restUntil = now() + REST_MS;
  };
  const keepRemote = async () => {
    if (remoteUpkeep === null || now() < restUntil) return;
    try {
      await remoteUpkeep();
      isReady = true;
    } catch (error) {
      failed(error);
    }
  };
  /** Null where the remote engine has no answer now. */
  const askRemote = async (query: SearchQuery): Promise<SearchResult | null> => {
    if (remote === null || now() < restUntil) return null;
    if (!isReady) {
      // Its index may be old or not there yet: until it has caught up once, the local one answers.
      void keepRemote();
      return null;
    }
    try {
      return await remote.search(query);
    } catch (error) {
      failed(error);
      return null;
    }
  };

  /** An index that cannot be written at the moment answers as it is, once there is one; keeping it up says so in the log. */
  const unlessLate = async (error: unknown) => {
    if (!(isBusy(error) || storageFaultOf(error) !== null) || (await local.state()) === null) throw error;
  };

  return {
    engines: remote === null ? [local.name] : [local.name, remote.name],
    search: async (query) => {
      const answer = await askRemote(query);
      if (answer !== null) return { ...answer, fellBack: false };
      if (!isAside) await localUpkeep().catch(unlessLate);
      return { ...(await local.search(query)), fellBack: remote !== null };
    },
    catchUp: async () => {
      await Promise.all([localUpkeep(), keepRemote()]);
    },
    reindex: async (name, onProgress) => {
      const engine = name === local.name ? local : remote;
      if (engine === null) throw new Error('There is no such engine here.');
      const rebuild = async () => rebuildIndex({ db, engine, source: await source(), ...(onProgress ? { onProgress } : {}) });
      await (engine === local ? alone(rebuild) : rebuild());
    },
    close: async () => {
      await local.close();
      await remote?.close();
    },
  };
}

/** A task that is asked for while it runs is run once more afterwards, for all who asked: they may have changed something since it began. */
function oneAtATime(task: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | null = null;
  let waiting: Promise<void> | null = null;
  const start = (): Promise<void> => {
    running = task().finally(() => {
      running = null;
    });
    return running;
  };
  return () => {
    if (running === null) return start();
    waiting ??= running
      .catch(() => {})
      .then(() => {
        waiting = null;
        return start();
      });
    return waiting;
  };
}

/** Runs tasks one after the other: two writers of one file in one process would wait for each other. */
function inTurn(): (task: () => Promise<void>) => Promise<void> {
  let last: Promise<void> = Promise.resolve();
  return (task) => {
    const mine = last.then(task);
    last = mine.catch(() => {});
    return mine;
  };
}
