import { lengthOf } from './bar-scale';

type ChanceBarProps = { before: number; after: number };

/** A running chance: what was reached before this step in outline, what the step adds filled. */
export function ChanceBar({ before, after }: ChanceBarProps) {
  const from = Math.min(before, after);
  return (
    <svg className="chance-bar" width="100%" height="14" aria-hidden="true" focusable="false">
      <rect className="bar-outline" x="0" y="1" width="100%" height="12" />
      <rect className="bar-soft" x="0" y="1" height="12" width={lengthOf(from, 1)} />
      <rect className="bar" x={lengthOf(from, 1)} y="1" height="12" width={lengthOf(Math.abs(after - before), 1)} />
    </svg>
  );
}
