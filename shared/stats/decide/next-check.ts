import type { CheckTable } from './check-model';
import { type PreparedCheck, preparedBits, preparedCheck, preparedOutcome } from './prepared-check';

/**
 * Part of a check's minutes that goes into setting up: finding the pin, choosing the range, clipping on. A check with
 * the instrument already on the same part saves it. One figure for all checks; an assumption, not a measurement.
 */
export const SET_UP_SHARE = 0.4;

/** First stage that needs solder. */
const SOLDER_STAGE = 3;

export type CheckCandidate = CheckTable & {
  readonly minutes: number;
  /** 0 outside the case to 4 solder, hard to undo. */
  readonly stage: number;
  readonly prerequisitesMet: boolean;
  /** Makes sense on this device, and what it needs besides instruments is at hand. */
  readonly possible: boolean;
  readonly instrumentsHeld: boolean;
  /** Risk to the unit: 0 none, 1 slight, 2 real. */
  readonly risk: 0 | 1 | 2;
  /** Belongs to safe power-up: comes before first power whatever it tells about the cause. */
  readonly safetyFirst: boolean;
  /** The last check used the same instrument on the same part. */
  readonly alreadySetUp: boolean;
};

export type NextCheckInput = {
  /** Beliefs, one per cause, the unlisted cause last; sums to 1. */
  readonly posterior: Float64Array;
  /** Checks that were not done yet. */
  readonly candidates: readonly CheckCandidate[];
  /** Something was already done with power on, so that safe power-up is behind us. */
  readonly poweredDone: boolean;
  /** A listed cause this probable counts as proved enough. Default 0.95. */
  readonly provedAt?: number;
  /** A check expected to tell less is not offered. Default 0.01. */
  readonly leastBits?: number;
  /**
   * A stage is worth doing first when its best check brings at least this share of the bits per minute of the best
   * check without solder. Default 0.05; 0 orders by stage strictly.
   */
  readonly stageShare?: number;
  /** How many of the leading causes each outcome reports on. Default 3. */
  readonly topCauses?: number;
};

/** Why a check stands where it stands. */
export type CheckReason =
  | 'safe-power-up'
  | 'least-invasive'
  | 'more-invasive'
  | 'little-for-the-time'
  | 'needs-solder'
  | 'already-set-up'
  | 'risk-to-unit';

export type LeftOutReason = 'not-possible' | 'no-instrument' | 'prerequisite-open' | 'tells-nothing' | 'cause-proved';

export type OutcomeEffect = {
  value: number;
  probability: number;
  /** Causes that lead now or would lead then, leading ones first; the unlisted cause may be among them. */
  effect: { cause: number; before: number; after: number }[];
};

export type RankedCheck = {
  /** Index into the candidates. */
  candidate: number;
  bits: number;
  /** After the saving for a set-up that stands. */
  minutes: number;
  bitsPerMinute: number;
  reasons: CheckReason[];
  /** Worked out when first asked for: only a few of the checks are shown. */
  readonly outcomes: OutcomeEffect[];
};

export type NextCheckResult = {
  offered: RankedCheck[];
  leftOut: { candidate: number; reason: LeftOutReason }[];
  /** Why no check is offered; null while there are some. */
  stop: 'cause-proved' | 'no-check-pays' | 'none-possible' | null;
  /** The cause that is proved enough, or null. */
  provedCause: number | null;
};

/** Minutes that a check takes now, less the set-up where it stands. */
export function effectiveMinutes(minutes: number, alreadySetUp: boolean): number {
  return alreadySetUp ? minutes * (1 - SET_UP_SHARE) : minutes;
}

/**
 * Which check to do next. Safe power-up checks come first until something was powered; the rest is grouped by stage,
 * the least invasive stage still worth doing first, and ranked inside a stage by expected bits per minute. Nothing
 * that needs solder stands above a useful check that does not. What tells nothing is left out, each with its reason.
 *
 * Probabilities are 0 to 1; `minutes` must be positive. Throws a RangeError on a table of the wrong shape.
 * Information per cost as the measure of a check: D. V. Lindley (1956); A. J. Gorry & G. O. Barnett, "Experience
 * with a model of sequential diagnosis", Computers and Biomedical Research 1 (1968).
 */
export function nextChecks(input: NextCheckInput): NextCheckResult {
  const { posterior, candidates, poweredDone, provedAt = 0.95, leastBits = 0.01 } = input;
  const proved = provedCause(posterior, provedAt);
  if (proved !== null) {
    const leftOut = candidates.map((_, candidate) => ({ candidate, reason: 'cause-proved' as const }));
    return { offered: [], leftOut, stop: 'cause-proved', provedCause: proved };
  }
  const leftOut: NextCheckResult['leftOut'] = [];
  const scored: RankedCheck[] = [];
  candidates.forEach((check, candidate) => {
    const obstacle = obstacleTo(check);
    const ranked = obstacle === null ? score(input, candidate) : null;
    const safety = check.safetyFirst && !poweredDone;
    if (ranked !== null && (safety || ranked.bits >= leastBits)) scored.push(ranked);
    else leftOut.push({ candidate, reason: obstacle ?? 'tells-nothing' });
  });
  const offered = order(input, scored);
  const nonePossible = leftOut.every(({ reason }) => reason !== 'tells-nothing');
  const stop = offered.length > 0 ? null : nonePossible ? 'none-possible' : 'no-check-pays';
  return { offered, leftOut, stop, provedCause: null };
}

/** The listed cause at or above the bar; the unlisted cause is never proved. */
function provedCause(posterior: Float64Array, provedAt: number): number | null {
  for (let cause = 0; cause < posterior.length - 1; cause++) if (posterior[cause]! >= provedAt) return cause;
  return null;
}

function obstacleTo(check: CheckCandidate): LeftOutReason | null {
  if (!check.possible) return 'not-possible';
  if (!check.instrumentsHeld) return 'no-instrument';
  return check.prerequisitesMet ? null : 'prerequisite-open';
}

function score({ posterior, candidates, topCauses = 3 }: NextCheckInput, candidate: number): RankedCheck {
  const check = candidates[candidate]!;
  const ready = preparedCheck(check, posterior.length);
  if (!(check.minutes > 0)) throw new RangeError(`A check must take some time, not ${check.minutes} minutes.`);
  const bits = preparedBits(posterior, ready);
  const minutes = effectiveMinutes(check.minutes, check.alreadySetUp);
  let outcomes: OutcomeEffect[] | undefined;
  return {
    candidate,
    bits,
    minutes,
    bitsPerMinute: bits / minutes,
    reasons: [],
    get outcomes() {
      outcomes ??= outcomeEffects(posterior, ready, topCauses);
      return outcomes;
    },
  };
}

/** Each outcome's chance, and the causes that lead now or would lead after it. */
function outcomeEffects(posterior: Float64Array, ready: PreparedCheck, topCauses: number): OutcomeEffect[] {
  const before = leading(posterior, topCauses);
  return Array.from({ length: ready.values }, (_, value) => {
    const { probability, after } = preparedOutcome(posterior, ready, value);
    const shown = new Set([...before, ...leading(after, topCauses)]);
    return { value, probability, effect: [...shown].map((cause) => ({ cause, before: posterior[cause]!, after: after[cause]! })) };
  });
}

/** Indices of the largest entries above 0, largest first; ties go to the lower index. */
function leading(values: Float64Array, count: number): number[] {
  const found: number[] = [];
  let least = 0;
  for (let index = 0; index < values.length; index++) {
    const value = values[index]!;
    // Most are passed over here.
    if (!(value > least)) continue;
    let place = found.length;
    while (place > 0 && values[found[place - 1]!]! < value) place--;
    found.splice(place, 0, index);
    if (found.length > count) found.pop();
    if (found.length === count) least = values[found[count - 1]!]!;
  }
  return found;
}

/** Sorts by group, then by bits per minute, and notes on each check why it stands there. */
function order(input: NextCheckInput, scored: RankedCheck[]): RankedCheck[] {
  const { candidates, poweredDone, stageShare = 0.05 } = input;
  const stageOf = (ranked: RankedCheck) => candidates[ranked.candidate]!.stage;
  const isSafety = (ranked: RankedCheck) => candidates[ranked.candidate]!.safetyFirst && !poweredDone;
  const bestByStage = new Map<number, number>();
  let best = 0;
  for (const ranked of scored) {
    if (isSafety(ranked)) continue;
    const stage = stageOf(ranked);
    bestByStage.set(stage, Math.max(bestByStage.get(stage) ?? 0, ranked.bitsPerMinute));
    if (stage < SOLDER_STAGE) best = Math.max(best, ranked.bitsPerMinute);
  }
  const isPoor = (ranked: RankedCheck) => (bestByStage.get(stageOf(ranked)) ?? 0) < stageShare * best;
  /** 0 safe power-up; then stages without solder, worthwhile ones first; then solder. */
  const band = (ranked: RankedCheck) => (isSafety(ranked) ? 0 : stageOf(ranked) >= SOLDER_STAGE ? 3 : isPoor(ranked) ? 2 : 1);
  const places = scored.map((ranked) => ({ ranked, band: band(ranked), stage: stageOf(ranked) }));
  places.sort(
    (a, b) =>
      a.band - b.band || a.stage - b.stage || b.ranked.bitsPerMinute - a.ranked.bitsPerMinute || a.ranked.candidate - b.ranked.candidate,
  );
  const first = places.find((other) => other.band > 0);
  for (const { ranked, band: group, stage } of places) {
    const check = candidates[ranked.candidate]!;
    const place = (['safe-power-up', 'least-invasive', 'little-for-the-time', 'needs-solder'] as const)[group]!;
    const sameAsFirst = stage === first?.stage;
    ranked.reasons.push(place === 'least-invasive' && !sameAsFirst ? 'more-invasive' : place);
    if (check.alreadySetUp) ranked.reasons.push('already-set-up');
    if (check.risk === 2) ranked.reasons.push('risk-to-unit');
  }
  return places.map(({ ranked }) => ranked);
}
