import { jeffreysInterval } from '../jeffreys-interval';

/** From this share on, at the lower end of its interval, a state is usual; one reading alone does not reach it. */
const USUAL_FROM = 0.3;
/** Up to this share, at the upper end of its interval, a state is unusual; that takes some ten readings. */
const UNUSUAL_TO = 0.2;

export type StateReadings = {
  /** How many working units showed each state at this pin. */
  readonly working: Float64Array;
  /** How many units whose cause involved this part did; zeros where there are none. */
  readonly faulty: Float64Array;
  /** Readings that the shares start from, spread over the states. Default 1: as much as one reading. */
  readonly startReadings?: number;
};

export type StateVerdict = {
  /** Chance to see this state here on the next working unit, and on one whose cause involves the part. 0 to 1. */
  working: number;
  faulty: number;
  /** 90 % interval of the share among working units. */
  low: number;
  high: number;
  /** 10 log10(faulty / working): above 0 speaks for the part, below 0 against. In decibans. */
  weight: number;
  verdict: 'usual' | 'unusual' | 'unclear';
};

/**
 * Is this logic state usual at this pin? The chances are predictive: (count + m q) / (readings + m), with q the state's share
 * over both kinds of units, itself started from even shares, so that without readings of one kind the weight is drawn to 0.
 * The verdict goes by the Jeffreys interval of the share among working units, never by the share alone: a single sample
 * is always unclear. Throws a RangeError where the arrays differ in length or the state is not among them.
 */
export function stateUsual(readings: StateReadings, state: number): StateVerdict {
  const { working, faulty, startReadings = 1 } = readings;
  if (working.length !== faulty.length) throw new RangeError('Working and faulty units must be counted over the same states.');
  if (!(state in working)) throw new RangeError(`There is no state ${state}.`);
  const [workingTotal, faultyTotal] = [total(working), total(faulty)];
  const both = working[state]! + faulty[state]!;
  const share = (both + startReadings / working.length) / (workingTotal + faultyTotal + startReadings);
  const chanceIn = (count: number, all: number) => (count + startReadings * share) / (all + startReadings);
  const chances = { working: chanceIn(working[state]!, workingTotal), faulty: chanceIn(faulty[state]!, faultyTotal) };
  const { low, high } = jeffreysInterval(working[state]!, workingTotal, 0.9);
  const verdict = low >= USUAL_FROM && workingTotal > 1 ? 'usual' : high <= UNUSUAL_TO ? 'unusual' : 'unclear';
  return { ...chances, low, high, weight: 10 * Math.log10(chances.faulty / chances.working), verdict };
}

function total(counts: Float64Array): number {
  return counts.reduce((sum, count) => sum + count, 0);
}
