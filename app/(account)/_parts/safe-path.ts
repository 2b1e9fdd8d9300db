/** Where to go after signing in: a page of this site, or the account's own page for anything else. */
export function safePath(asked: unknown): string {
  // Browsers read a backslash as a slash, and two slashes as the start of another site's address.
  return typeof asked === 'string' && /^\/(?![/\\])[^\\\p{Cc}]{0,2000}$/u.test(asked) ? asked : '/account';
}
