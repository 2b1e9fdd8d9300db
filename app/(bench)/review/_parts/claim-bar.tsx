'use client';

import { useMutation } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { ClaimView } from '../../../../shared/schemas/review';
import { TrpcProvider, useTrpc } from '../../../_trpc/client';
import { take } from '../_actions/decide';
import { DecisionForm } from './decision-form';

/** How often an open page renews its claim, in milliseconds. */
const RENEW_AFTER = 5 * 60_000;

/** Who looks at this case. An open page takes it as soon as it is alive, where nobody else has it, and keeps it. */
export function ClaimBar(props: { id: string; claim: ClaimView }) {
  return (
    <TrpcProvider>
      <Claim {...props} />
    </TrpcProvider>
  );
}

function Claim({ id, claim }: { id: string; claim: ClaimView }) {
  const trpc = useTrpc();
  const { mutateAsync } = useMutation(trpc.review.claim.mutationOptions());
  const [held, setHeld] = useState(claim);
  const [alive, setAlive] = useState(false);
  useEffect(() => {
    const ask = () =>
      mutateAsync({ id })
        .then(setHeld)
        // Decided meanwhile, or no connection: the decision itself says so.
        .catch(() => undefined);
    setAlive(true);
    void ask();
    const timer = window.setInterval(() => void ask(), RENEW_AFTER);
    return () => window.clearInterval(timer);
  }, [id, mutateAsync]);
  return (
    <div className="review-bar" data-claim={alive ? held.state : 'asking'}>
      {held.state === 'other' ? (
        <p role="alert">
          <strong>{held.by} is looking at this one</strong>, for {held.minutes} more {held.minutes === 1 ? 'minute' : 'minutes'} at
          most. You can read it; what you decide would not be taken.
        </p>
      ) : null}
      {held.state === 'mine' ? <p>You are looking at it; the other moderators see that.</p> : null}
      {held.state === 'free' ? <DecisionForm action={take} hidden={{ id }} submit="Take it to look at" /> : null}
    </div>
  );
}
