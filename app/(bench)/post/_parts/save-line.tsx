import type { SaveState } from './use-draft';

const WORDS: Record<SaveState, string> = {
  untouched: 'The form saves itself while you write.',
  waiting: 'Saving …',
  saved: 'Saved as a draft in your account.',
  here: 'Kept in this browser. Sign in to keep it in your account and to send it.',
  offline: 'Your account could not be reached, or could not store it: kept in this browser, and saved as soon as that works again.',
  gone: 'This draft was discarded or sent elsewhere: what stands here is kept in this browser alone.',
  full: 'You have as many drafts as an account may: this one is kept in this browser alone.',
  lost: 'This browser keeps nothing, and you are not signed in: leave the page open, or sign in first.',
};

/** How the form is kept at this moment. */
export function SaveLine({ state }: { state: SaveState }) {
  const isQuiet = state === 'untouched' || state === 'waiting' || state === 'saved';
  return (
    <p className="post-save" data-state={state} role={isQuiet ? undefined : 'status'}>
      {WORDS[state]}
    </p>
  );
}
