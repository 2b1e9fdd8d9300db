import { isAtLeast, type Role } from './role';

/** Who is asking: a signed-in account. Null stands for a visitor who is not. */
export type Actor = { id: string; role: Role };

/** What an action is done to. `ownerId` is null where nobody owns it, or the link to its owner was cut. */
export type Target = { ownerId: string | null };

type Rule = (actor: Actor, target: Target) => boolean;

const owns: Rule = (actor, { ownerId }) => ownerId !== null && ownerId === actor.id;
const atLeast =
  (role: Role): Rule =>
  (actor) =>
    isAtLeast(actor.role, role);
const both =
  (...rules: Rule[]): Rule =>
  (actor, target) =>
    rules.every((rule) => rule(actor, target));
const either =
  (...rules: Rule[]): Rule =>
  (actor, target) =>
    rules.some((rule) => rule(actor, target));
const not =
  (rule: Rule): Rule =>
  (actor, target) =>
    !rule(actor, target);

/** Every action that not everybody may do, and who may. */
const RULES = {
  /** An account's own page: name, role, sessions, download. The target's owner is the account. */
  'account.see': owns,
  'account.change-password': owns,
  'account.delete': owns,
  /** Nobody changes a role of their own: the last keeper would shut everybody out. */
  'account.set-role': both(atLeast('keeper'), not(owns)),
  'account.make-reset-link': atLeast('keeper'),
  'account.list': atLeast('keeper'),
  /** Reading how the program is doing. */
  'site.watch': atLeast('keeper'),
  'submission.post': atLeast('contributor'),
  'submission.see': either(owns, atLeast('moderator')),
  'submission.edit': both(owns, atLeast('contributor')),
  'submission.withdraw': owns,
  'submission.cut-link': owns,
  /** Nobody decides on a case of their own. */
  'submission.decide': both(atLeast('moderator'), not(owns)),
} satisfies Record<string, Rule>;

export type Action = keyof typeof RULES;
export const ACTIONS = Object.keys(RULES) as Action[];

/**
 * Whether somebody may do something. The interface asks it to hide, the procedure to decide.
 *
 * @param actor null for a visitor who is not signed in, who may do none of these actions.
 * @param target what it is done to; without one, nobody owns it.
 */
export function can(actor: Actor | null, action: Action, target: Target = { ownerId: null }): boolean {
  return actor !== null && RULES[action](actor, target);
}
