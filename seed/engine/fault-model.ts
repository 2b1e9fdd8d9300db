/**
 * How a fault model is written down. Causes lead to *states* of a unit ("no-clock", "short-5v"), states to further
 * states, and each names the symptoms and check outcomes that it shows, in one notation, words parted by blanks:
 *
 *     no-clock                   a state, with everything that follows from it
 *     @grey-screen:.8            a symptom and P(present); `.9` where no number stands
 *     clock-at-processor=stuck   a check, one of its outcomes and its probability; `.93` where no number stands
 *
 * "no-5v in drive" holds what the state "no-5v" shows on drives besides; "crystal-dead in drive" does so for a cause.
 * Symptoms that several states show add up as independent reasons. For a check, the statement nearest to the cause
 * holds: the way's own words first, then its states in the order written, then theirs. What the outcomes named leave of 1
 * goes to the outcome of a working unit. Words about what a device does not have are passed over.
 */
export type FaultModel = {
  readonly name: string;
  readonly causes: Readonly<Record<string, CauseDescription>>;
  readonly states: Readonly<Record<string, string>>;
  /** What every cause inside the unit shows, unless its own words say otherwise. */
  readonly inside: string;
  /** P(present) where nothing shows the symptom: wrong reports and unrelated wear; `other` for those not named. */
  readonly leaks: Readonly<Record<string, number>> & { readonly other: number };
  /** P(an outcome other than the true one is written down), per check; `other` for those not named. */
  readonly misreadings: Readonly<Record<string, number>> & { readonly other: number };
  /** What differs from the defaults that follow from a fix's action. */
  readonly fixes: Readonly<Record<string, Partial<FixDescription>>>;
  readonly boards: Readonly<Record<string, BoardDescription>>;
  /** Standard deviations, in log odds, by which boards differ: per observable, and per observable and cause. */
  readonly differences: { readonly observable: number; readonly cause: number };
};

export type CauseDescription = {
  /** How often, in relation to the other causes; scaled per board so that the prior sums to 1. */
  readonly rate: number;
  /** P(the fault comes and goes). */
  readonly intermittent: number;
  /** What holds in every way of failing. */
  readonly always: string;
  /** Ways of failing with their shares, which need not sum to 1. */
  readonly ways: readonly (readonly [share: number, shows: string])[];
};

export type FixDescription = {
  /** P(cured | the fix addresses the cause, part good). */
  readonly cures: number;
  /** P(part fitted is itself bad, or the work was not done well). */
  readonly badPart: number;
  /** P(made worse), whatever the cause. */
  readonly worse: number;
};

export type BoardDescription = {
  /** Weight of the board among the cases drawn. */
  readonly popularity: number;
  /** Symptoms that the board cannot show though others of its category can: a recorder has no disks. */
  readonly without: readonly string[];
  /** Cause to the factor on its rate: weak spots, what a revision put right, 0 for what cannot happen. */
  readonly factors: Readonly<Record<string, number>>;
};
