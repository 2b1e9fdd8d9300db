'use client';

import { type MouseEvent, useEffect, useRef } from 'react';
import { AFTER_KEY_WORDS } from './after-key-words';
import type { Sent } from './use-send';

/** The second half of a double press on the button that stood here a moment ago, in milliseconds. */
const STRAY_PRESS = 700;

/** Said in place of the form once it was sent. */
export function SentPanel({ sent }: { sent: Sent }) {
  const head = useRef<HTMLHeadingElement>(null);
  const shownAt = useRef(Number.POSITIVE_INFINITY);
  useEffect(() => {
    shownAt.current = performance.now();
    head.current?.focus();
  }, []);
  const dropStray = (event: MouseEvent) => {
    if (event.detail > 0 && performance.now() - shownAt.current < STRAY_PRESS) event.preventDefault();
  };
  return (
    <section className="section" aria-labelledby="post-sent-head">
      <h2 id="post-sent-head" tabIndex={-1} ref={head}>
        {sent.isNew ? 'Sent to review' : 'This very case is there already'}
      </h2>
      {sent.isNew ? (
        <p>Thank you. A moderator looks at it before it is published; until then it changes no figure.</p>
      ) : (
        <p>The same content twice is one submission, so nothing was added.</p>
      )}
      {sent.id === null ? null : (
        <p>
          Case <span className="figure">{sent.id}</span>
        </p>
      )}
      {sent.key === null ? null : (
        <>
          <p>{AFTER_KEY_WORDS}</p>
          <p className="figure once-shown">{sent.key}</p>
        </>
      )}
      <p className="onward" onClickCapture={dropStray}>
        <a className="press press-main" href="/submissions">
          Your submissions
        </a>
        <a href="/post">Post another</a>
      </p>
    </section>
  );
}
