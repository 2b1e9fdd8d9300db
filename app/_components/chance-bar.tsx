type ChanceBarProps = { before: number; after: number };

const percentOf = (share: number) => `${(Math.min(1, Math.max(0, share)) * 100).toFixed(2)}%`;

/** A running chance: what was reached before this step in outline, what the step adds filled. */
export function ChanceBar({ before, after }: ChanceBarProps) {
  const from = Math.min(before, after);
  return (
    <svg className="chance-bar" width="100%" height="14" aria-hidden="true" focusable="false">
      <rect className="bar-outline" x="0" y="1" width="100%" height="12" />
      <rect className="bar-soft" x="0" y="1" height="12" width={percentOf(from)} />
      <rect className="bar" x={percentOf(from)} y="1" height="12" width={percentOf(Math.abs(after - before))} />
    </svg>
  );
}
