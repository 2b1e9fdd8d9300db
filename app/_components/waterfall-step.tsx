/** Where a waterfall's figures lie, in decibans, so that its rows share one scale. */
export type WaterfallScale = { low: number; high: number };

/** The scale on which a start and the running sums of its weights all fit, nought included. */
export function waterfallScale(start: number, weights: readonly number[]): WaterfallScale {
  let sum = start;
  let low = Math.min(0, start);
  let high = Math.max(0, start);
  for (const weight of weights) {
    sum += weight;
    low = Math.min(low, sum);
    high = Math.max(high, sum);
  }
  const margin = Math.max(0.5, (high - low) * 0.04);
  return { low: low - margin, high: high + margin };
}

type WaterfallStepProps = { scale: WaterfallScale; from: number; to: number; kind: 'weight' | 'sum' };

/** One row of a waterfall: a weight as a bar from the sum before it to the sum after it, or a sum as a mark. */
export function WaterfallStep({ scale, from, to, kind }: WaterfallStepProps) {
  const at = (value: number) => ((value - scale.low) / (scale.high - scale.low)) * 100;
  const percent = (value: number) => `${value.toFixed(2)}%`;
  const left = Math.min(at(from), at(to));
  const width = Math.abs(at(to) - at(from));
  const shape = kind === 'sum' ? 'bar-sum' : to < from ? 'bar-against' : 'bar';
  return (
    <svg className="waterfall-step" width="100%" height="20" aria-hidden="true" focusable="false">
      <line className="line-nought" x1={percent(at(0))} x2={percent(at(0))} y1="0" y2="20" />
      {kind === 'sum' ? (
        <rect className={shape} x={percent(at(to))} y="1" height="18" width="4" transform="translate(-2 0)" />
      ) : (
        <rect className={shape} x={percent(left)} y="4" height="12" width={percent(Math.max(width, 0.4))} />
      )}
    </svg>
  );
}
