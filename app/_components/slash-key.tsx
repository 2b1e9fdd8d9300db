'use client';

import { useEffect, useState } from 'react';

const STORED = 'slash-key';

function typesInto(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));
}

/**
 * Lets the key "/" go to the look-up box, and where there is none to the search box. A key that works alone has to be one that can be turned off
 * (WCAG 2.1.4), so the setting stands beside it. Shows nothing where scripts do not run.
 */
export function SlashKey() {
  const [on, setOn] = useState<boolean | null>(null);

  useEffect(() => setOn(window.localStorage.getItem(STORED) !== 'off'), []);
  useEffect(() => {
    if (on !== true) return;
    const go = (event: KeyboardEvent) => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || typesInto(event.target)) return;
      const box = document.getElementById('words') ?? document.getElementById('site-search-box');
      if (!(box instanceof HTMLInputElement)) return;
      event.preventDefault();
      box.focus();
      box.select();
    };
    window.addEventListener('keydown', go);
    return () => window.removeEventListener('keydown', go);
  }, [on]);

  if (on === null) return null;
  const change = (next: boolean) => {
    window.localStorage.setItem(STORED, next ? 'on' : 'off');
    setOn(next);
  };
  return (
    <p className="slash-key">
      <label>
        <input type="checkbox" checked={on} onChange={(event) => change(event.target.checked)} /> The key <kbd>/</kbd> goes to the
        look-up box, or the search box
      </label>
    </p>
  );
}
