'use client';

import { type KeyboardEvent, useRef } from 'react';
import type { QueueLine as Line } from '../../../../shared/schemas/review';
import { QueueLine } from './queue-line';

/**
 * The waiting cases. With the focus on one of them, j and k lead to the next and the one before; the keys do nothing
 * anywhere else (WCAG 2.1.4).
 */
export function QueueList({ lines, query }: { lines: Line[]; query: string }) {
  const list = useRef<HTMLOListElement>(null);
  const step = (event: KeyboardEvent) => {
    const by = { j: 1, k: -1 }[event.key];
    if (by === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    const links = [...(list.current?.querySelectorAll<HTMLAnchorElement>('.queue-line a') ?? [])];
    const at = links.indexOf(document.activeElement as HTMLAnchorElement);
    links[Math.min(Math.max(at + by, 0), links.length - 1)]?.focus();
    event.preventDefault();
  };
  return (
    <ol className="rows queue" ref={list} onKeyDown={step}>
      {lines.map((line) => (
        <QueueLine key={line.id} line={line} query={query} />
      ))}
    </ol>
  );
}
