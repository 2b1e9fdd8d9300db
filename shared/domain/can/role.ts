import { z } from 'zod';

/** What an account may do, from the least: each may do what those before it may. `keeper` runs the site. */
export const ROLES = ['reader', 'contributor', 'moderator', 'keeper'] as const;

export const roleSchema = z.enum(ROLES, { error: `The role must be one of ${ROLES.join(', ')}.` });
export type Role = z.infer<typeof roleSchema>;

/** Whether a role is at least another. */
export function isAtLeast(role: Role, least: Role): boolean {
  return ROLES.indexOf(role) >= ROLES.indexOf(least);
}
