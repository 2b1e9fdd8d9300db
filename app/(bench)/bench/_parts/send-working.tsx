'use client';

import { useState } from 'react';
import { pinReadings } from '../../../../shared/domain/bench/bench-log';
import { plainClient } from '../../../_trpc/plain-client';
import { useUnit } from './unit-context';

/** Sends the readings of a working unit to review. */
export function SendWorking({ onSent }: { onSent: () => void }) {
  const { unit, entries } = useUnit();
  const [state, setState] = useState<'idle' | 'sending' | 'sent'>('idle');
  const [told, setTold] = useState<string[]>([]);
  const readings = pinReadings(entries);
  const send = async () => {
    setState('sending');
    setTold([]);
    try {
      const outcome = await plainClient.workingUnit.submit.mutate({ device: unit.device, readings });
      if (outcome.kind === 'problems') {
        setTold(outcome.problems);
        return setState('idle');
      }
      setState('sent');
      onSent();
    } catch (error) {
      const answered = typeof error === 'object' && error !== null && 'data' in error && error.data != null;
      setTold([answered && error instanceof Error ? error.message : 'No answer came. The readings are kept: send them when the network is back.']);
      setState('idle');
    }
  };
  if (state === 'sent') return <p className="note">Sent to review. They count once a moderator has accepted them.</p>;
  return (
    <>
      <p className="soft">Readings of a working unit tell others what is usual. They are published without anything that says whose they are.</p>
      {told.map((line) => (
        <p className="bench-told" role="alert" key={line}>
          {line}
        </p>
      ))}
      <p>
        <button type="button" className="press press-main bench-post" disabled={readings.length === 0 || state === 'sending'} onClick={() => void send()}>
          {state === 'sending' ? 'Sending' : `Send ${readings.length} readings to review`}
        </button>
      </p>
    </>
  );
}
