'use client';

import { lengthOf } from './bar-scale';

type PairedBarsProps = { before: number; after: number; full: number };

/** One share before and after: the upper bar in outline is now, the lower one filled is afterwards. */
export function PairedBars({ before, after, full }: PairedBarsProps) {
  return (
    <svg className="paired-bars" width="100%" height="18" aria-hidden="true" focusable="false">
      <line className="line-rule" x1="0" x2="100%" y1="17.5" y2="17.5" />
      <rect className="bar-open" x="0" y="1" height="6" width={lengthOf(before, full)} />
      <rect className="bar" x="0" y="9" height="8" width={lengthOf(after, full)} />
    </svg>
  );
}
