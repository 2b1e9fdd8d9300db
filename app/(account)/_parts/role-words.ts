import type { Role } from '../../../shared/domain/can/role';

/** What each role may do, for its holder. */
export const ROLE_WORDS: Record<Role, string> = {
  reader: 'may read the casebook, as everybody may',
  contributor: 'may post cases',
  moderator: 'may post cases and decide on those that others posted',
  keeper: 'runs the site: decides on cases, gives roles, helps with lost passwords',
};
