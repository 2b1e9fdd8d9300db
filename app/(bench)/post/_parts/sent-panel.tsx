'use client';

import { useEffect, useRef } from 'react';
import type { Sent } from './use-send';

/** Said in place of the form once it was sent. */
export function SentPanel({ sent }: { sent: Sent }) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
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
      <p className="onward">
        <a className="press press-main" href="/submissions">
          Your submissions
        </a>
        <a href="/post">Post another</a>
      </p>
    </section>
  );
}
