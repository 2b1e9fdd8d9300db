import type { ReactNode } from 'react';

/** A table that may be wider than the screen: it scrolls in its own box, which the keyboard reaches, too. */
export function WideTable({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="plot-scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
