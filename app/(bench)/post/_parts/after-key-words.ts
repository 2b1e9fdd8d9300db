/** What the key is good for, wherever it is shown. */
export const AFTER_KEY_WORDS =
  'With this key you can say later, on the page of the case and without an account, whether the repair held. It is shown this once and works once: note it down.';
