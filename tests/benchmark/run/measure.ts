/** Times of one side in milliseconds. */
export type Times = { median: number; p95: number };

/** One line of the table: ours beside its alternative, measured in the same run. */
export type Row = {
  id: string;
  work: string;
  alternative: string;
  /** What is asked for, in words. */
  asked: string;
  ours: string;
  theirs: string;
  /** How many times faster (or smaller) ours is, or the share that `asked` speaks of. */
  ratio: number | null;
  ratioText: string;
  met: boolean | null;
  note?: string;
};

/** The value below which this share of the sorted numbers lies. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number;
}

export function timesOf(numbers: readonly number[]): Times {
  return { median: quantile(numbers, 0.5), p95: quantile(numbers, 0.95) };
}

const now = () => performance.now();

/** Milliseconds that one call takes. */
export function timed(work: () => unknown): number {
  const start = now();
  work();
  return now() - start;
}

/**
 * Both ways of answering the same questions, question by question: first a few unmeasured, then each in turn, ours and
 * theirs one after the other. Quick work is repeated until it fills a fifth of a millisecond at least. The ratio is the median of the
 * questions' own ratios.
 */
export function paired<Q>(questions: readonly Q[], ours: (q: Q) => unknown, theirs: (q: Q) => unknown): { ours: Times; theirs: Times; ratio: number } {
  for (const q of questions.slice(0, 8)) {
    ours(q);
    theirs(q);
  }
  const own: number[] = [];
  const other: number[] = [];
  for (const q of questions) {
    own.push(repeated(() => ours(q)));
    other.push(repeated(() => theirs(q)));
  }
  return { ours: timesOf(own), theirs: timesOf(other), ratio: quantile(own.map((ms, i) => (other[i] as number) / ms), 0.5) };
}

function repeated(work: () => unknown): number {
  const once = timed(work);
  if (once > 0.2) return once;
  const times = Math.min(200, Math.ceil(0.2 / Math.max(once, 0.001)));
  const total = timed(() => {
    for (let i = 0; i < times; i += 1) work();
  });
  return total / times;
}

export function ms(n: number): string {
  return n >= 100 ? `${n.toFixed(0)} ms` : n >= 1 ? `${n.toFixed(2)} ms` : `${(n * 1000).toFixed(1)} µs`;
}

export function timesText({ median, p95 }: Times): string {
  return `${ms(median)} (p95 ${ms(p95)})`;
}

/** A row whose target is "at least so many times faster". */
export function fasterRow(
  head: Pick<Row, 'id' | 'work' | 'alternative'>,
  measured: { ours: Times; theirs: Times; ratio: number },
  { atLeast, note }: { atLeast: number; note?: string },
): Row {
  return {
    ...head,
    asked: `at least ${atLeast} times faster`,
    ours: timesText(measured.ours),
    theirs: timesText(measured.theirs),
    ratio: measured.ratio,
    ratioText: `${measured.ratio.toFixed(1)} times faster`,
    met: measured.ratio >= atLeast,
    note,
  };
}

/** A row whose target is "at most so many times the time of the alternative". */
export function atMostRow(
  head: Pick<Row, 'id' | 'work' | 'alternative'>,
  measured: { ours: Times; theirs: Times; ratio: number },
  { atMost, note }: { atMost: number; note?: string },
): Row {
  const share = 1 / measured.ratio;
  return {
    ...head,
    asked: `at most ${atMost} times its time`,
    ours: timesText(measured.ours),
    theirs: timesText(measured.theirs),
    ratio: share,
    ratioText: `${share.toFixed(2)} times its time`,
    met: share <= atMost,
    note,
  };
}
