import { z } from 'zod';
import { roleSchema } from '../domain/can/role';

export const NAME_LENGTH = { min: 3, max: 30 } as const;
/** Length is what makes a password hard to guess; no kinds of characters are asked for. */
export const PASSWORD_LENGTH = { min: 10, max: 128 } as const;

/** The name that an account signs in with. */
export const accountNameSchema = z
  .string({ error: 'Type a name.' })
  .trim()
  .min(NAME_LENGTH.min, `Use at least ${NAME_LENGTH.min} characters.`)
  .max(NAME_LENGTH.max, `Use at most ${NAME_LENGTH.max} characters.`)
  .regex(/^[A-Za-z0-9._-]*$/, 'Use letters a to z, digits, full stop, hyphen and underscore only.');

/** A password that somebody chooses. That it is not a common one is checked by the server, which has the list. */
export const newPasswordSchema = z
  .string({ error: 'Type a password.' })
  .min(PASSWORD_LENGTH.min, `Use at least ${PASSWORD_LENGTH.min} characters; a few words in a row do well.`)
  .max(PASSWORD_LENGTH.max, `Use at most ${PASSWORD_LENGTH.max} characters.`);

/** A password as typed to prove who it is: any that could ever have been chosen. */
const typedPassword = z
  .string({ error: 'Type your password.' })
  .min(1, 'Type your password.')
  .max(PASSWORD_LENGTH.max, 'That is longer than any password here.');

export const signUpSchema = z.object({ name: accountNameSchema, password: newPasswordSchema });
export type SignUp = z.infer<typeof signUpSchema>;

export const signInSchema = z.object({
  name: z.string({ error: 'Type your name.' }).trim().min(1, 'Type your name.').max(100, 'That is longer than any name here.'),
  password: typedPassword,
});
export type SignIn = z.infer<typeof signInSchema>;

export const changePasswordSchema = z.object({ current: typedPassword, password: newPasswordSchema });
export type ChangePassword = z.infer<typeof changePasswordSchema>;

export const deleteAccountSchema = z.object({ password: typedPassword });

/** The secret part of a reset link. */
export const resetTokenSchema = z.string().regex(/^[A-Za-z0-9_-]{43}$/, 'This is no reset link.');

export const resetPasswordSchema = z.object({ token: resetTokenSchema, password: newPasswordSchema });
export type ResetPassword = z.infer<typeof resetPasswordSchema>;

export const setRoleSchema = z.object({ accountId: z.string().min(1).max(64), role: roleSchema });

/** How something an account asked for went. `fields` names what has to be typed differently, and how. */
export type AccountOutcome =
  | { status: 'done' }
  | { status: 'refused'; fields: Partial<Record<'name' | 'password' | 'current' | 'token', string>> };
