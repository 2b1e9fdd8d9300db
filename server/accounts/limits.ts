import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import { AppError } from '../../shared/errors';

const MINUTE = 60;
const HOUR = 60 * MINUTE;

/** What a program may ask of the HTTP interface: so many requests in so many seconds. */
export const API_LIMIT = { requests: 300, seconds: 5 * MINUTE };

const limit = (points: number, duration: number) => new RateLimiterMemory({ points, duration });

/**
 * How often something may be tried. Kept in memory: one process serves the site, and no address is ever written down.
 * Behind no proxy a sender may pretend an address, so each limit by address stands beside one that does not ask for it.
 */
export const createLimits = () => ({
  /** Wrong passwords, by account and address: the owner, elsewhere, is not shut out by somebody who guesses. */
  wrongPasswordHere: limit(10, 15 * MINUTE),
  /** Wrong passwords for one account from anywhere. */
  wrongPassword: limit(60, HOUR),
  /** Tries to sign in from one address, whatever the account. */
  signInFrom: limit(60, 15 * MINUTE),
  signUpFrom: limit(20, HOUR),
  /** New accounts on the whole site. */
  signUp: limit(200, HOUR),
  resetFrom: limit(20, 15 * MINUTE),
  /** Questions of programs through the HTTP interface, from one address. */
  apiFrom: limit(API_LIMIT.requests, API_LIMIT.seconds),
  /** Files of the data package, from one address: fourteen make one download. */
  downloadFrom: limit(140, HOUR),
});

export type Limits = ReturnType<typeof createLimits>;

/** Pages and procedures are bundled apart, and in development loaded anew: all of them count in the same place. */
const kept = globalThis as typeof globalThis & { secondBenchLimits?: Limits | undefined };

/** This process's limits. */
export function getLimits(): Limits {
  kept.secondBenchLimits ??= createLimits();
  return kept.secondBenchLimits;
}

/** Starts all counts anew, for tests. */
export function forgetLimits(): void {
  kept.secondBenchLimits = undefined;
}

/**
 * Counts one try.
 * @throws AppError 'too-many-tries', saying when the next one may be made
 */
export async function takeTurn(limiter: RateLimiterMemory, key: string): Promise<void> {
  try {
    await limiter.consume(key);
  } catch (refused) {
    throw refused instanceof RateLimiterRes ? tooMany(refused.msBeforeNext) : refused;
  }
}

/**
 * Refuses where the tries are used up, and counts none.
 * @throws AppError 'too-many-tries'
 */
export async function requireTurn(limiter: RateLimiterMemory, key: string): Promise<void> {
  const state = await limiter.get(key);
  if (state !== null && state.consumedPoints >= limiter.points) throw tooMany(state.msBeforeNext);
}

function tooMany(msBeforeNext: number): AppError {
  const minutes = Math.max(1, Math.ceil(msBeforeNext / 60_000));
  return new AppError('too-many-tries', { detail: `Try again in ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}.` });
}
