import { toleranceFactor } from './tolerance-factor';

/** A reading this many robust deviations off the median is a slip (a lost decimal point), not part of the spread. */
const SLIP = 30;
/** Turns a median absolute deviation into a standard deviation where readings are normal. */
const NORMAL_MAD = 1.4826;
const LEAST_READINGS = 3;

export type NumberReadings = {
  /** Readings of working units at this place, all in one unit. */
  readonly working: Float64Array;
  /** Smallest step that the readings were noted in (0.01 for 4.97); 0 where not known. */
  readonly resolution?: number;
  /** Share of working units that the interval is to hold, and how surely. Default 0.95 and 0.95. */
  readonly coverage?: number;
  readonly confidence?: number;
  /** Published limits, either of which may be missing (supply tolerance, logic thresholds). */
  readonly limits?: { readonly low: number | null; readonly high: number | null };
};

export type NumberVerdict = {
  /** From published limits; null where there are none. */
  withinLimits: boolean | null;
  /** From working units; null where there are too few. */
  usual: { centre: number; low: number; high: number; readings: number; setAside: number; within: boolean } | null;
};

/**
 * Is this number usual here? The centre is the median of the working units' readings. The tolerance interval holds the share
 * `coverage` of working units with the given confidence, if these are near normal: mean -+ k standard deviations (see
 * `toleranceFactor`), widened by half a step of the resolution. Slips, thirty robust deviations off the median, are set aside
 * first where there are five readings or more; a factor that large hardly ever meets real spread, and keeps the coverage.
 * Fewer than three readings give no interval: no data is not "usual". All values in the readings' unit.
 */
export function numberUsual(readings: NumberReadings, value: number): NumberVerdict {
  const { working, resolution = 0, coverage = 0.95, confidence = 0.95, limits } = readings;
  const bounded = limits !== undefined && (limits.low !== null || limits.high !== null);
  const withinLimits = bounded ? value >= (limits.low ?? -Infinity) && value <= (limits.high ?? Infinity) : null;
  if (working.length < LEAST_READINGS) return { withinLimits, usual: null };
  const centre = median(working);
  const kept = working.length < 5 ? working : withoutSlips(working, centre, resolution);
  const mean = kept.reduce((sum, reading) => sum + reading, 0) / kept.length;
  const variance = kept.reduce((sum, reading) => sum + (reading - mean) ** 2, 0) / (kept.length - 1);
  // Rounding hides what is smaller than a step: the spread is never less than that of rounding itself.
  const deviation = Math.sqrt(Math.max(variance, resolution ** 2 / 12));
  const half = toleranceFactor(kept.length, coverage, confidence) * deviation + resolution / 2;
  const [low, high] = [mean - half, mean + half];
  const counted = { readings: kept.length, setAside: working.length - kept.length };
  return { withinLimits, usual: { centre, low, high, ...counted, within: value >= low && value <= high } };
}

function withoutSlips(readings: Float64Array, centre: number, resolution: number): Float64Array {
  const spread = Math.max(NORMAL_MAD * median(readings.map((reading) => Math.abs(reading - centre))), resolution);
  // More than half of the readings alike, noted in unknown steps: nothing says what a slip would be.
  if (spread === 0) return readings;
  return readings.filter((reading) => Math.abs(reading - centre) <= SLIP * spread);
}

function median(values: Float64Array): number {
  const sorted = values.toSorted();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
