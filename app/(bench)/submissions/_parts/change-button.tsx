'use client';

import { useMutation } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { EVEN_OFFLINE } from '../../post/_parts/even-offline';
import { AFTER_KEY_WORDS } from '../../post/_parts/after-key-words';
import { TrpcProvider, useTrpc } from '../../../_trpc/client';

type Change = 'discard' | 'withdraw' | 'remove' | 'cut' | 'edit';
type ChangeButtonProps = { id: string; change: Change; about: string };

const WORDS: Record<Change, { ask: string; sure: string | null; yes: string }> = {
  edit: { ask: 'Make the changes', sure: null, yes: '' },
  discard: { ask: 'Discard', sure: 'Nothing of this draft is kept.', yes: 'Discard for good' },
  withdraw: { ask: 'Withdraw', sure: 'It leaves the review and is not published. Its photos are deleted.', yes: 'Withdraw it' },
  remove: { ask: 'Delete', sure: 'It is deleted with all that belongs to it, and nobody can undo it.', yes: 'Delete it for good' },
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
  const [key, setKey] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const { ask, sure, yes } = WORDS[change];
  const go = async () => {
    if (busy) return;
    setBusy(true);
    setFault(null);
    try {
      const done = await make(id);
      if (done.key !== undefined) setKey(done.key);
      else if (done.to === undefined) router.refresh();
      else router.push(done.to);
    } catch (error) {
      setFault(error instanceof Error ? error.message : 'It could not be done just now. Try again.');
    }
    setBusy(false);
    setAsking(false);
  };
  if (key !== null) {
    return (
      <div className="post-row-keys">
        <p role="status">The link is cut. {AFTER_KEY_WORDS}</p>
        <p className="figure once-shown">{key}</p>
        <button type="button" className="press" onClick={() => router.refresh()}>
          I have kept the key
        </button>
      </div>
    );
  }
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

/** Makes the change; says where to go on, if elsewhere, and the key that is shown once. */
function useChange(change: Change): (id: string) => Promise<{ to?: string; key?: string }> {
  const trpc = useTrpc();
  const discard = useMutation(trpc.submission.discardDraft.mutationOptions(EVEN_OFFLINE));
  const withdraw = useMutation(trpc.submission.withdraw.mutationOptions(EVEN_OFFLINE));
  const remove = useMutation(trpc.submission.remove.mutationOptions(EVEN_OFFLINE));
  const cut = useMutation(trpc.submission.cutLink.mutationOptions(EVEN_OFFLINE));
  const edit = useMutation(trpc.submission.startChanges.mutationOptions(EVEN_OFFLINE));
  return async (id) => {
    if (change === 'edit') return { to: `/post?draft=${(await edit.mutateAsync({ id })).draftId}` };
    if (change === 'cut') return cut.mutateAsync({ id });
    await { discard, withdraw, remove }[change].mutateAsync({ id });
    return {};
  };
}
