type ShareBarProps = {
  /** 0 to 1. */
  share: number;
  low: number;
  high: number;
  hatched?: boolean;
};

const percentOf = (share: number) => `${(Math.min(1, Math.max(0, share)) * 100).toFixed(2)}%`;

/** A share as a bar from nought, with a bracket over its interval. The figures stand beside it in words. */
export function ShareBar({ share, low, high, hatched = false }: ShareBarProps) {
  return (
    <svg className="share-bar" width="100%" height="20" aria-hidden="true" focusable="false">
      <line className="line-rule" x1="0" x2="100%" y1="10" y2="10" />
      <rect className={hatched ? 'bar-hatched' : 'bar'} x="0" y="4" height="12" width={percentOf(share)} />
      <line className="line-bracket" x1={percentOf(low)} x2={percentOf(high)} y1="10" y2="10" />
      <line className="line-bracket" x1={percentOf(low)} x2={percentOf(low)} y1="1" y2="19" />
      <line className="line-bracket" x1={percentOf(high)} x2={percentOf(high)} y1="1" y2="19" />
    </svg>
  );
}
