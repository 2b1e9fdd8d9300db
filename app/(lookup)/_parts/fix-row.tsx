'use client';

import { AddressLink } from '../../_components/address-link';
import { formatPercent, formatPercentRange } from '../../_components/format-figures';
import { ShareBar } from '../../_components/share-bar';

type FixRowProps = {
  label: string;
  /** Its tries and cures, in words. */
  counted: string;
  /** Share cured with its bracket, 0 to 1. */
  estimate: number;
  low: number;
  high: number;
  /** Address of the question with this fix tried in vain. */
  inVain: string;
};

/** One fix: its tries and cures, the share with its bracket, and a press to say that it changed nothing here. */
export function FixRow({ label, counted, estimate, low, high, inVain }: FixRowProps) {
  return (
    <li className="row fix-row">
      <strong>{label}</strong>
      <ShareBar share={estimate} low={low} high={high} />
      <span className="cause-share">{formatPercent(estimate)}</span>
      <span className="cause-count">
        {counted} (<span className="figure">{formatPercentRange(low, high)}</span>)
        <span className="no-print">
          {' '}
          ·{' '}
          <AddressLink href={inVain} scroll className="row-link" label={`I tried this without change: ${label}`}>
            I tried this: no change
          </AddressLink>
        </span>
      </span>
    </li>
  );
}
