/** One held-out prediction: probabilities per cause (unlisted last) and the causes that were right, as shares of 1. */
export type Prediction = { probability: Float64Array; target: readonly { cause: number; share: number }[]; weight?: number };

export type ReliabilityBin = { low: number; high: number; count: number; confidence: number; accuracy: number };

/**
 * How good predictions were. Shares are 0 to 1. `logLoss` in nats; `brier` is Brier's sum over causes, 0 to 2; `ece` is
 * the mean distance of top-1 confidence and accuracy over 15 bins of equal width (Naeini, Cooper & Hauskrecht 2015).
 */
export type Scores = { count: number; accuracy: number; top3: number; logLoss: number; brier: number; ece: number; reliability: ReliabilityBin[] };

export const RELIABILITY_BINS = 15;
/** A right answer that was given no chance at all costs as much as one in 10^12. */
const LEAST_PROBABILITY = 1e-12;

/** Adds up predictions; a record with several causes counts each by its share. */
export function createScoreBoard(): { add(prediction: Prediction): void; scores(): Scores } {
  const sum = { count: 0, accuracy: 0, top3: 0, logLoss: 0, brier: 0 };
  const bins = Array.from({ length: RELIABILITY_BINS }, () => ({ count: 0, confidence: 0, accuracy: 0 }));
  return {
    add({ probability, target }) {
      const top = topCauses(probability, 3);
      const confidence = probability[top[0] as number] as number;
      const right = (causes: readonly number[]) => target.reduce((s, t) => s + (causes.includes(t.cause) ? t.share : 0), 0);
      const bin = bins[Math.min(RELIABILITY_BINS - 1, Math.floor(confidence * RELIABILITY_BINS))] as (typeof bins)[0];
      bin.count += 1;
      bin.confidence += confidence;
      bin.accuracy += right(top.slice(0, 1));
      sum.count += 1;
      sum.accuracy += right(top.slice(0, 1));
      sum.top3 += right(top);
      const squares = probability.reduce((s, p) => s + p * p, 0);
      for (const { cause, share } of target) {
        const p = probability[cause] as number;
        sum.logLoss -= share * Math.log(Math.max(p, LEAST_PROBABILITY));
        sum.brier += share * (squares - p * p + (1 - p) ** 2);
      }
    },
    scores() {
      const n = Math.max(1, sum.count);
      const gap = bins.reduce((s, b) => s + Math.abs(b.confidence - b.accuracy), 0);
      return {
        count: sum.count,
        accuracy: sum.accuracy / n,
        top3: sum.top3 / n,
        logLoss: sum.logLoss / n,
        brier: sum.brier / n,
        ece: gap / n,
        reliability: bins.map((b, i) => ({
          low: i / RELIABILITY_BINS,
          high: (i + 1) / RELIABILITY_BINS,
          count: b.count,
          confidence: b.count === 0 ? 0 : b.confidence / b.count,
          accuracy: b.count === 0 ? 0 : b.accuracy / b.count,
        })),
      };
    },
  };
}

/** The most probable causes, best first. */
export function topCauses(probability: Float64Array, count: number): number[] {
  const top: number[] = [];
  probability.forEach((p, c) => {
    let at = top.length;
    while (at > 0 && (probability[top[at - 1] as number] as number) < p) at -= 1;
    if (at < count) {
      top.splice(at, 0, c);
      if (top.length > count) top.pop();
    }
  });
  return top;
}
