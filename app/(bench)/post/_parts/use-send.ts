'use client';

import { useMutation } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { CaseStatus } from '../../../../shared/schemas/case';
import type { FieldProblem, FoundDetail } from '../../../../shared/schemas/submission';
import { useTrpc } from '../../../_trpc/client';
import { EVEN_OFFLINE } from './even-offline';
import { removeLocalDraft } from './local-draft';
import type { useDraft } from './use-draft';

/** What was sent. `id` null: it is there already, and not this account's. `key`: shown this once. */
export type Sent = { id: string | null; status: CaseStatus | null; isNew: boolean; key: string | null };

const NO_ANSWER =
  'No answer came. What you wrote is kept: send it again when the connection is back. Sent twice, it is one submission.';

/** Sends the form to review, once at a time. */
export function useSend(draft: ReturnType<typeof useDraft>) {
  const trpc = useTrpc();
  const { mutateAsync: submit } = useMutation(trpc.submission.submit.mutationOptions(EVEN_OFFLINE));
  const { mutateAsync: resubmit } = useMutation(trpc.submission.resubmit.mutationOptions(EVEN_OFFLINE));
  const [tries, setTries] = useState(0);
  const [sending, setSending] = useState(false);
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [details, setDetails] = useState<FoundDetail[]>([]);
  const [told, setTold] = useState<string | null>(null);
  const [sent, setSent] = useState<Sent | null>(null);
  const [website, setWebsite] = useState('');
  const busy = useRef(false);

  const ask = async () => {
    await draft.pause();
    const { id, base, caseId } = draft.held.current;
    const input = { draftId: base === null ? null : id, document: draft.document, website };
    const outcome = await (caseId === null ? submit(input) : resubmit({ ...input, id: caseId }));
    if (outcome.kind === 'problems' || outcome.kind === 'details') draft.resume();
    if (outcome.kind === 'problems') return setProblems(outcome.problems);
    if (outcome.kind === 'details') {
      setDetails(outcome.details);
      return setTold('Something in it may say who or where you are. Decide about each: replace it, remove it or keep it.');
    }
    removeLocalDraft();
    setSent({ id: outcome.id, status: outcome.status, isNew: outcome.kind === 'submitted', key: ('key' in outcome && outcome.key) || null });
  };

  const send = async (isSound: boolean) => {
    if (busy.current) return;
    setTold(null);
    setProblems([]);
    if (isSound) {
      busy.current = true;
      setSending(true);
      try {
        await ask();
      } catch (error) {
        draft.resume();
        setTold(messageOf(error));
      }
      busy.current = false;
      setSending(false);
    }
    setTries((now) => now + 1);
  };
  const reset = () => {
    setTries(0);
    setProblems([]);
    setDetails([]);
    setTold(null);
  };
  return { send, reset, tries, sending, problems, details, told, sent, website, setWebsite };
}

/** What a refusal says; an answer that never came says nothing of use. */
function messageOf(error: unknown): string {
  const answered = typeof error === 'object' && error !== null && 'data' in error && error.data != null;
  return answered && error instanceof Error ? error.message : NO_ANSWER;
}
