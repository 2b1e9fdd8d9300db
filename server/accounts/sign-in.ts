import { isAPIError } from 'better-auth/api';
import type { AccountOutcome, SignIn } from '../../shared/schemas/account';
import type { Db } from '../db';
import { authFor } from './auth';
import { cookiesOnly } from './find-actor';
import { getLimits, requireTurn, takeTurn } from './limits';

const WRONG = 'Name and password do not belong together. Check both.';

/**
 * Signs in.
 *
 * @returns the cookies of the new session; or a refusal that does not tell whether there is such a name.
 * @throws AppError 'too-many-tries'
 */
export async function signIn(db: Db, typed: SignIn, address: string): Promise<AccountOutcome & { cookies: string[] }> {
  const limits = getLimits();
  const account = typed.name.toLowerCase();
  await takeTurn(limits.signInFrom, address);
  await requireTurn(limits.wrongPassword, account);
  await requireTurn(limits.wrongPasswordHere, `${address} ${account}`);
  try {
    const { headers } = await authFor(db).api.signInUsername({
      body: { username: typed.name, password: typed.password },
      returnHeaders: true,
    });
    return { status: 'done', cookies: headers.getSetCookie() };
  } catch (error) {
    // 401 for a wrong pair, 422 for a name of a shape that no account has.
    if (!isAPIError(error) || ![401, 422].includes(error.statusCode)) throw error;
    await limits.wrongPassword.penalty(account);
    await limits.wrongPasswordHere.penalty(`${address} ${account}`);
    return { status: 'refused', fields: { password: WRONG }, cookies: [] };
  }
}

/** Ends the session of a request. @returns the cookies that make the browser forget it */
export async function signOut(db: Db, headers: Headers): Promise<string[]> {
  const answer = await authFor(db).api.signOut({ headers: cookiesOnly(headers), returnHeaders: true });
  return answer.headers.getSetCookie();
}
