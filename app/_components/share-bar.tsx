'use client';

import { lengthOf } from './bar-scale';

type ShareBarProps = {
  /** 0 to 1. */
  share: number;
  low: number;
  high: number;
  /** The share that the full width stands for. */
  full?: number;
  hatched?: boolean;
};

/** A share as a bar from nought, with a bracket over its interval. The figures stand beside it in words. */
export function ShareBar({ share, low, high, full = 1, hatched = false }: ShareBarProps) {
  return (
    <svg className="share-bar" width="100%" height="20" aria-hidden="true" focusable="false">
      <line className="line-rule" x1="0" x2="100%" y1="10" y2="10" />
      <rect className={hatched ? 'bar-hatched' : 'bar'} x="0" y="4" height="12" width={lengthOf(share, full)} />
      <line className="line-bracket" x1={lengthOf(low, full)} x2={lengthOf(high, full)} y1="10" y2="10" />
      <line className="line-bracket" x1={lengthOf(low, full)} x2={lengthOf(low, full)} y1="1" y2="19" />
      <line className="line-bracket" x1={lengthOf(high, full)} x2={lengthOf(high, full)} y1="1" y2="19" />
    </svg>
  );
}
