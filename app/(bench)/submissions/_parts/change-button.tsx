'use client';

import { useMutation } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { EVEN_OFFLINE } from '../../post/_parts/even-offline';
import { TrpcProvider, useTrpc } from '../../../_trpc/client';

type Change = 'discard' | 'withdraw' | 'cut' | 'edit';
type ChangeButtonProps = { id: string; change: Change; about: string };

const WORDS: Record<Change, { ask: string; sure: string | null; yes: string }> = {
  edit: { ask: 'Make the changes', sure: null, yes: '' },
  discard: { ask: 'Discard', sure: 'Nothing of this draft is kept.', yes: 'Discard for good' },
  withdraw: { ask: 'Withdraw', sure: 'It leaves the review and is not published. Its photos are deleted.', yes: 'Withdraw it' },
  cut: {
    ask: 'Cut my link',
    sure: 'The case stays, and nothing says any more that it is yours: you cannot change or withdraw it after this, and nobody can undo it.',
    yes: 'Cut the link for good',
  },
};

/** A change of one's own submission; one that takes something away asks first. */
export function ChangeButton(props: ChangeButtonProps) {
  return (
    <TrpcProvider>
      <Change {...props} />
    </TrpcProvider>
  );
}

function Change({ id, change, about }: ChangeButtonProps) {
  const router = useRouter();
  const make = useChange(change);
  const [asking, setAsking] = useState(false);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const { ask, sure, yes } = WORDS[change];
  const go = async () => {
    if (busy) return;
    setBusy(true);
    setFault(null);
    try {
      const to = await make(id);
      if (to === null) router.refresh();
      else router.push(to);
    } catch (error) {
      setFault(error instanceof Error ? error.message : 'It could not be done just now. Try again.');
    }
    setBusy(false);
    setAsking(false);
  };
  if (asking) {
    return (
      <div className="post-row-keys">
        <p role="status">{sure}</p>
        <button type="button" className="press" onClick={() => void go()}>
          {yes}
          <span className="sr-only">: {about}</span>
        </button>
        <button type="button" className="press" onClick={() => setAsking(false)}>
          Leave it
        </button>
      </div>
    );
  }
  return (
    <>
      <button type="button" className="press press-small" onClick={() => (sure === null ? void go() : setAsking(true))}>
        {ask}
        <span className="sr-only">: {about}</span>
      </button>
      {fault === null ? null : <p role="alert">{fault}</p>}
    </>
  );
}

/** Makes the change; returns where to go on, or null to stay. */
function useChange(change: Change): (id: string) => Promise<string | null> {
  const trpc = useTrpc();
  const discard = useMutation(trpc.submission.discardDraft.mutationOptions(EVEN_OFFLINE));
  const withdraw = useMutation(trpc.submission.withdraw.mutationOptions(EVEN_OFFLINE));
  const cut = useMutation(trpc.submission.cutLink.mutationOptions(EVEN_OFFLINE));
  const edit = useMutation(trpc.submission.startChanges.mutationOptions(EVEN_OFFLINE));
  return async (id) => {
    if (change === 'edit') return `/post?draft=${(await edit.mutateAsync({ id })).draftId}`;
    await { discard, withdraw, cut }[change].mutateAsync({ id });
    return null;
  };
}
