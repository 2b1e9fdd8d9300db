'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';

const STORED = 'review-keys';

function typesInto(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));
}

/** Lets `n` go on to the next case and `q` back to the queue. Keys that work alone can be turned off (WCAG 2.1.4). */
export function ReviewKeys({ next, queue }: { next: string | null; queue: string }) {
  const router = useRouter();
  const [on, setOn] = useState<boolean | null>(null);
  useEffect(() => setOn(window.localStorage.getItem(STORED) !== 'off'), []);
  useEffect(() => {
    if (on !== true) return;
    const go = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || typesInto(event.target)) return;
      const to = { n: next, q: queue }[event.key];
      if (to) router.push(to);
    };
    window.addEventListener('keydown', go);
    return () => window.removeEventListener('keydown', go);
  }, [on, next, queue, router]);
  if (on === null) return null;
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={on}
        onChange={(event) => {
          window.localStorage.setItem(STORED, event.target.checked ? 'on' : 'off');
          setOn(event.target.checked);
        }}
      />
      <span>
        The key <kbd>n</kbd> goes on, <kbd>q</kbd> goes to the queue
      </span>
    </label>
  );
}
