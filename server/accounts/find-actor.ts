import type { Actor } from '../../shared/domain/can/can';
import { roleSchema } from '../../shared/domain/can/role';
import type { Db } from '../db';
import { authFor } from './auth';
import { SESSION_COOKIE } from './session-cookie';

/** The signed-in account behind a request's cookies, with the role it has at this moment, or null. */
export async function findActor(db: Db, headers: Headers): Promise<Actor | null> {
  if (!headers.get('cookie')?.includes(SESSION_COOKIE)) return null;
  const found = await authFor(db).api.getSession({ headers: cookiesOnly(headers), query: { disableRefresh: true } });
  return found && { id: found.user.id, role: roleSchema.parse(found.user.role) };
}

/** What the sign-in library may know of a request: not the browser, not the address. */
export function cookiesOnly(headers: Headers): Headers {
  return new Headers({ cookie: headers.get('cookie') ?? '' });
}
