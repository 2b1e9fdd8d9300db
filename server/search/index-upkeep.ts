import { setImmediate as breath } from 'node:timers/promises';
import type { Db } from '../db';
import { findNewestChange, listCaseChanges } from '../repositories/case-change-repository';
import { findCases } from '../repositories/case-repository';
import { allDocuments, type DocumentSource } from './document-source';
import type { IndexState, SearchEngine } from './search-engine';

/** Changes taken in at a time. */
const BATCH = 50;

export type UpkeepOptions = {
  db: Db;
  engine: SearchEngine;
  source: DocumentSource;
  /** Told how many cases are in the new index, where it is made anew. */
  onProgress?: (done: number) => void;
  /** Makes the index anew where nobody has to wait for it; false where it could not, so that it is done here. */
  rebuildAside?: () => Promise<boolean>;
};

/**
 * Brings an index up to the end of the change feed: what is accepted is put in as it is now, everything else taken out.
 * It is made anew where there is none, where it was made with another vocabulary, or where it stands at a change that
 * this database does not have. Cut off at any moment, it goes on from there the next time.
 */
export async function catchUpIndex(options: UpkeepOptions): Promise<void> {
  const { db, engine, source } = options;
  let following = false;
  let wasAside = false;
  for (;;) {
    const state = await engine.state();
    const changes = await changesAfter(db, state);
    if (state === null || changes === null || state.fingerprint !== source.fingerprint) {
      // Elsewhere once at most: where the index is not what it should be after that, it is made anew here.
      const isDone = !wasAside && (await options.rebuildAside?.());
      wasAside = true;
      if (!isDone) await rebuildIndex(options);
      continue;
    }
    // Neither the database nor the index ever waits for anything: without a breath, everybody else would wait for the last change.
    if (following) await breath();
    following = true;
    const last = changes.at(-1);
    if (last === undefined) return;
    const ids = [...new Set(changes.map((change) => change.caseId))];
    const accepted = (await findCases(db, ids)).filter((record) => record.status === 'accepted');
    const put = await source.documents(accepted);
    const kept = new Set(put.map((document) => document.id));
    const remove = ids.filter((id) => !kept.has(id));
    // Where another process was quicker, the next round starts from where it got to.
    await engine.apply({ put, remove }, state, { ...state, cursor: last.seq, cursorCase: last.caseId });
  }
}

/** Makes the index anew from every accepted case. What changes meanwhile is taken in by the next catching up. */
export async function rebuildIndex({ db, engine, source, onProgress }: UpkeepOptions): Promise<void> {
  const cursor = await findNewestChange(db);
  const [newest] = cursor === 0 ? [] : await listCaseChanges(db, { after: cursor - 1, take: 1 });
  const state: IndexState = { cursor, cursorCase: newest?.caseId ?? null, fingerprint: source.fingerprint };
  await engine.rebuild(allDocuments(db, source, onProgress), state);
}

/** What the feed has after a state; null where it does not have the state's own change: it is another feed. */
async function changesAfter(db: Db, state: IndexState | null) {
  if (state === null) return null;
  if (state.cursor === 0) return listCaseChanges(db, { after: 0, take: BATCH });
  const [own, ...rest] = await listCaseChanges(db, { after: state.cursor - 1, take: BATCH + 1 });
  return own?.seq === state.cursor && own.caseId === state.cursorCase ? rest : null;
}
