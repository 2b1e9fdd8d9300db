import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { username } from 'better-auth/plugins/username';
import { NAME_LENGTH, PASSWORD_LENGTH } from '../../shared/schemas/account';
import type { Db } from '../db';
import { getEnv } from '../env';
import { keptSecret } from './session-secret';

/** A session lasts this long from signing in, however often it is used. */
export const SESSION_DAYS = 30;

/**
 * Signing in by name and password, with sessions in the database. Only this process calls it: its own web endpoints
 * are not served, so that every way in is a procedure with its guard, its limits and its check of the origin.
 */
function createAuth(db: Db, settings: { secret: string; siteUrl: string | null }) {
  return betterAuth({
    database: prismaAdapter(db, { provider: 'sqlite' }),
    secret: settings.secret,
    baseURL: settings.siteUrl ?? 'http://localhost',
    telemetry: { enabled: false },
    logger: { level: 'error' },
    // The limits of this site also count by account: see limits.ts. The library's own hold for its endpoints alone.
    rateLimit: { enabled: false },
    emailAndPassword: {
      enabled: true,
      minPasswordLength: PASSWORD_LENGTH.min,
      maxPasswordLength: PASSWORD_LENGTH.max,
    },
    plugins: [
      username({
        displayUsername: false,
        minUsernameLength: NAME_LENGTH.min,
        maxUsernameLength: NAME_LENGTH.max,
        usernameValidator: (name) => /^[A-Za-z0-9._-]+$/.test(name),
      }),
    ],
    user: { additionalFields: { role: { type: 'string', defaultValue: 'contributor', input: false } } },
    account: { modelName: 'credential' },
    // `freshAge` 0: what needs the password asks for the password, not for a young session.
    session: { expiresIn: SESSION_DAYS * 86_400, disableSessionRefresh: true, freshAge: 0 },
    advanced: {
      cookiePrefix: 'second-bench',
      useSecureCookies: false,
      ipAddress: { disableIpTracking: true },
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/' },
    },
  });
}

export type Auth = ReturnType<typeof createAuth>;

const made = new WeakMap<Db, Auth>();

/** The one instance for a database. */
export function authFor(db: Db): Auth {
  const existing = made.get(db);
  if (existing) return existing;
  const { sessionSecret, siteUrl, databaseFile } = getEnv();
  const secret = sessionSecret ?? keptSecret(databaseFile, (line) => process.stderr.write(`${line}\n`));
  const auth = createAuth(db, { secret, siteUrl });
  made.set(db, auth);
  return auth;
}
