'use client';

import { useState } from 'react';
import type { SaveState } from './use-draft';
import { RarityLine } from './rarity-line';
import { SaveLine } from './save-line';

type SendSectionProps = {
  /** Address of this form, to come back to. */
  here: string;
  signedIn: boolean;
  mayPost: boolean;
  isAgain: boolean;
  sending: boolean;
  state: SaveState;
  onDiscard: () => Promise<void>;
};

/** The end of the form: send it, or throw it away. */
export function SendSection({ here, signedIn, mayPost, isAgain, sending, state, onDiscard }: SendSectionProps) {
  const [asking, setAsking] = useState(false);
  const [failed, setFailed] = useState(false);
  const discard = async () => {
    try {
      await onDiscard();
      setFailed(false);
      setAsking(false);
    } catch {
      setFailed(true);
    }
  };
  return (
    <section className="section post-send" aria-labelledby="post-send-head">
      <h2 id="post-send-head">Send it to review</h2>
      <RarityLine />
      {mayPost ? (
        <button type="submit" className="press press-main" aria-disabled={sending}>
          {sending ? 'Sending …' : isAgain ? 'Send the changes to review' : 'Send to review'}
        </button>
      ) : signedIn ? (
        <p>Your account may read and not post. Ask whoever keeps this site. What stands here is kept in this browser.</p>
      ) : (
        <p>
          <a className="press press-main" href={`/sign-in?next=${encodeURIComponent(here)}`}>
            Sign in to send it
          </a>{' '}
          <span className="soft">What you wrote is here again afterwards.</span>
        </p>
      )}
      <SaveLine state={state} />
      {asking ? (
        <div className="post-row-keys">
          <p>Discard what stands here? Nothing of it is kept.</p>
          <button type="button" className="press" onClick={() => void discard()}>
            Discard for good
          </button>
          <button type="button" className="press" onClick={() => setAsking(false)}>
            Go on writing
          </button>
        </div>
      ) : (
        <button type="button" className="press press-small" onClick={() => setAsking(true)}>
          Discard the draft
        </button>
      )}
      {failed ? <p role="alert">It could not be discarded just now: no answer came. Try again.</p> : null}
    </section>
  );
}
