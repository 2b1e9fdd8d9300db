import { RateLimiterMemory } from 'rate-limiter-flexible';

const MINUTE = 60;
const HOUR = 60 * MINUTE;
const limit = (points: number, duration: number) => new RateLimiterMemory({ points, duration });

const createSubmitLimits = () => ({
  /** A form that saves itself does so every few seconds at most. */
  save: limit(60, MINUTE),
  /** Words read into the vocabulary, by address: the form asks while signed out, too. */
  readFrom: limit(60, MINUTE),
  /** Pictures take the machine's time. */
  photo: limit(60, HOUR),
  submit: limit(30, HOUR),
  submitFrom: limit(60, HOUR),
  /** Everything else that changes a submission. */
  change: limit(60, HOUR),
  /** Reports about published cases: by account, by address of who is not signed in, and on the whole site. */
  report: limit(20, HOUR),
  reportFrom: limit(5, HOUR),
  reports: limit(200, HOUR),
});

let current = createSubmitLimits();
/** How often an account or an address may save and post; kept in memory, as the process's other limits are. */
export const getSubmitLimits = () => current;
/** Starts all counts anew, for tests. */
export function forgetSubmitLimits(): void {
  current = createSubmitLimits();
}
