/** Every refusal, with the sentence that a visitor may read. Closed: a new one is added here. */
export const ERROR_TEXTS = {
  'case-not-found': 'There is no published case with this id. Check the address, or look it up again.',
  'device-not-found': 'No device with this name is in the catalogue. Choose one from the list.',
  'entry-not-found': 'The vocabulary has no such entry. Choose one from the list.',
  'casebook-empty': 'The casebook has no devices and no cases yet. Run "npm run demo" or import cases first.',
  'last-keeper': 'This is the last account that keeps the site, so nothing was changed. Make another account a keeper first.',
  'account-not-found': 'There is no account with this name.',
  'submission-not-found': 'You have posted no case with this id, or its link to you was cut.',
  'draft-not-found': 'There is no such draft any more: it was discarded or submitted.',
  'move-not-possible': 'This cannot be done with the case as it stands now.',
  'review-not-found': 'There is no such submission, or not any more. Go back to the queue.',
  'report-not-found': 'This report is settled already, or there is none with this id.',
  'own-submission': 'This is your own submission: another moderator has to look at it.',
  'looked-at-by-other': 'Another moderator looks at this one at the moment, so nothing was changed. Take the next one.',
  'changed-meanwhile': 'It was changed since this page was loaded, so nothing was decided. Load the page again and look at what is new.',
  'bench-full': 'There is no room for more bench logs. Remove some that are done.',
  'other-account': 'The bench logs in this browser belong to another account.',
  'sign-in-needed': 'Sign in first: this is for people with an account.',
  'not-allowed': 'Your account may not do this.',
  'other-origin': 'The request did not come from a page of this site, so nothing was changed. Open the page again and retry.',
  'too-many-tries': 'Too many tries.',
  'too-few-cases': 'The casebook has too few cases with a cause to be evaluated.',
  'disk-full':
    'The disk of this site is full, so nothing was stored. Reading goes on. Keep what you have typed and try again later: whoever runs the site has to make room, and it then stores again by itself.',
  'disk-read-only':
    'The disk of this site cannot be written at the moment, so nothing was stored. Reading goes on. Keep what you have typed and try again later: whoever runs the site has to make the disk writable.',
} as const;

export type ErrorCode = keyof typeof ERROR_TEXTS;

/**
 * A refusal: something expected that the caller must be told. `message` is the public text; `cause` keeps what
 * lies behind it for the log and is never shown.
 */
export class AppError extends Error {
  override readonly name = 'AppError';
  readonly code: ErrorCode;

  constructor(code: ErrorCode, options: { detail?: string; cause?: unknown } = {}) {
    super(options.detail ? `${ERROR_TEXTS[code]} ${options.detail}` : ERROR_TEXTS[code], { cause: options.cause });
    this.code = code;
  }
}

/**
 * Whether an error is a refusal. By its name and code, not by its class: a bundler may load this module twice in one
 * process, and a refusal made by one copy has to be known by the other.
 */
export function isAppError(error: unknown): error is AppError {
  return error instanceof Error && error.name === 'AppError' && 'code' in error && String(error.code) in ERROR_TEXTS;
}
