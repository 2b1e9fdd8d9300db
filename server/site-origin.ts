import type { Env } from './env';

/**
 * Where visitors know the site, such as https://bench.example, without a slash at its end: from the settings, else from the
 * request itself.
 */
export function siteOrigin(headers: Headers, { siteUrl, trustProxy }: Pick<Env, 'siteUrl' | 'trustProxy'>): string {
  if (siteUrl) return new URL(siteUrl).origin;
  const host = (trustProxy && headers.get('x-forwarded-host')) || headers.get('host') || 'localhost';
  return `${trustProxy && headers.get('x-forwarded-proto') === 'https' ? 'https' : 'http'}://${host}`;
}
