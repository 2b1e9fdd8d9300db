'use client';

import { useEffect, useRef } from 'react';

/**
 * Takes a lost focus to the answer. A link that was pressed may be gone after the address changed, and the
 * focus with it; a reader who works by keyboard would otherwise start over at the top.
 */
export function FocusAnswer({ address }: { address: string }) {
  const last = useRef(address);
  useEffect(() => {
    if (last.current === address) return;
    last.current = address;
    const lost = document.activeElement === null || document.activeElement === document.body;
    if (lost) document.getElementById('answer')?.focus({ preventScroll: true });
  }, [address]);
  return null;
}
