'use client';

import { useMutation } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { type DraftDocument, emptyDraft, type FoundDetail } from '../../../../shared/schemas/submission';
import { useTrpc } from '../../../_trpc/client';
import { EVEN_OFFLINE } from './even-offline';
import type { FormStart } from './load-start';
import { type LocalDraft, newDraftId, readLocalDraft, removeLocalDraft, writeLocalDraft } from './local-draft';

/** How long after the last key the form is saved, and after a failed save tried again, in milliseconds. */
const SAVE_AFTER = 1_200;
const RETRY_AFTER = 10_000;

export type SaveState = 'untouched' | 'waiting' | 'saved' | 'here' | 'offline' | 'gone' | 'full' | 'lost';

type Held = Omit<LocalDraft, 'document'>;

/** The form and how it is kept: in this browser at once, and on the server where the account may post. */
export function useDraft(start: FormStart) {
  const trpc = useTrpc();
  const { mutateAsync: save } = useMutation(trpc.submission.saveDraft.mutationOptions(EVEN_OFFLINE));
  const { mutateAsync: discardStored } = useMutation(trpc.submission.discardDraft.mutationOptions(EVEN_OFFLINE));
  const [document, setDocument] = useState(start.document);
  const [state, setState] = useState<SaveState>('untouched');
  const [details, setDetails] = useState<FoundDetail[]>([]);
  const [other, setOther] = useState<LocalDraft | null>(null);
  const [ready, setReady] = useState(false);
  const held = useRef<Held>({ id: '', base: null, caseId: null, from: '' });
  const latest = useRef(document);
  const timer = useRef<number | undefined>(undefined);
  const running = useRef<Promise<void> | null>(null);
  const paused = useRef(false);

  const push = async (): Promise<void> => {
    if (running.current || paused.current) return;
    const sent = latest.current;
    const { id, base } = held.current;
    running.current = save({ id, isNew: base === null, document: sent })
      .then((outcome) => {
        if (held.current.id !== id) return;
        if (outcome.kind !== 'saved') return setState(outcome.kind);
        held.current.base = outcome.savedAt;
        if (window.location.search !== `?draft=${id}`) window.history.replaceState(null, '', `/post?draft=${id}`);
        setDetails(outcome.details);
        if (latest.current !== sent) return schedule(SAVE_AFTER);
        setState('saved');
        // What the server holds whole need not stay in a browser that others may use.
        if (outcome.details.length === 0) removeLocalDraft();
        else writeLocalDraft({ ...held.current, document: sent });
      })
      .catch(() => {
        setState('offline');
        schedule(RETRY_AFTER);
      })
      .finally(() => {
        running.current = null;
      });
    await running.current;
  };

  const schedule = (after: number) => {
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => void push(), after);
  };

  const take = (next: DraftDocument, from: Held) => {
    held.current = from;
    latest.current = next;
    setDocument(next);
    setOther(null);
    setReady(true);
    if (from.base === null && isEmpty(next)) return;
    if (start.mayPost && next !== start.document) schedule(0);
  };

  const fresh = (): Held => ({ id: newDraftId(), base: null, caseId: null, from: window.location.search });
  const begin = () =>
    take(
      start.document,
      start.draft ? { id: start.draft.id, base: start.draft.savedAt, caseId: start.draft.caseId, from: '' } : fresh(),
    );

  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page has come alive
  useEffect(() => {
    const local = readLocalDraft();
    const same =
      local !== null &&
      (start.draft
        ? local.id === start.draft.id && local.base === start.draft.savedAt
        : start.from === 'blank' || local.from === window.location.search);
    if (local === null || isEmpty(local.document)) begin();
    else if (same) take(local.document, local);
    else setOther(local);
    const again = () => held.current.id !== '' && latest.current !== start.document && start.mayPost && void push();
    window.addEventListener('online', again);
    return () => {
      window.removeEventListener('online', again);
      window.clearTimeout(timer.current);
    };
  }, []);

  const update = (change: (now: DraftDocument) => DraftDocument) => {
    const next = change(latest.current);
    latest.current = next;
    setDocument(next);
    const kept = writeLocalDraft({ ...held.current, document: next });
    setState(start.mayPost ? 'waiting' : kept ? 'here' : 'lost');
    if (start.mayPost) schedule(SAVE_AFTER);
  };

  /** Saves nothing more, and waits for the save that is under way: what comes next must not be overtaken by it. */
  const pause = async () => {
    paused.current = true;
    window.clearTimeout(timer.current);
    await running.current;
    window.clearTimeout(timer.current);
  };
  const resume = () => {
    paused.current = false;
    if (start.mayPost) schedule(SAVE_AFTER);
  };

  /** Stores the form if it never was; the draft's id, or null where that does not work just now. */
  const store = async (): Promise<string | null> => {
    window.clearTimeout(timer.current);
    if (running.current) await running.current;
    if (held.current.base === null) await push();
    else if (start.mayPost) schedule(SAVE_AFTER);
    return held.current.base === null ? null : held.current.id;
  };

  const discard = async () => {
    await pause();
    try {
      if (start.mayPost) await discardStored({ id: held.current.id });
    } catch (error) {
      resume();
      throw error;
    }
    paused.current = false;
    removeLocalDraft();
    window.history.replaceState(null, '', '/post');
    held.current = fresh();
    latest.current = emptyDraft(start.month);
    setDocument(latest.current);
    setDetails([]);
    setState('untouched');
  };

  const goOn = () => {
    if (other === null) return;
    take(other.document, other);
    writeLocalDraft(other);
  };
  const startOver = () => {
    removeLocalDraft();
    begin();
  };

  return { document, update, state, details, ready, other, goOn, startOver, discard, store, pause, resume, held };
}

/** Whether nothing was entered that would be missed. */
function isEmpty(document: DraftDocument): boolean {
  return JSON.stringify({ ...document, month: '' }) === JSON.stringify(emptyDraft(''));
}
