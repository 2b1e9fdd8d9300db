import { dictionary } from '@zxcvbn-ts/language-common';

/** The passwords that leaked most often, in lower case, as the package of that list keeps them. */
const common = new Set(dictionary['passwords-common'] as readonly string[]);

/** Why a password that is long enough is still easily guessed, as a sentence for whoever chose it; null if it is not. */
export function whyEasilyGuessed(password: string, name: string): string | null {
  const lower = password.toLowerCase();
  if (common.has(lower)) return 'This is one of the passwords that are tried first. Choose another.';
  if (new Set(lower).size < 4) return 'The same few characters repeat. Choose another.';
  if (lower.replaceAll(name.toLowerCase(), '').length < 4) return 'This is your name again. Choose another.';
  return null;
}
