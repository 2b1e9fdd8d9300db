import { isAtLeast } from '../../shared/domain/can/role';
import { attempt } from '../_casebook/attempt';
import { serverCaller } from '../_trpc/server';
import { SiblingLinks } from './sibling-links';

const FOR_MODERATORS = [
  { href: '/review', label: 'Waiting cases' },
  { href: '/review/working-units', label: 'Working units' },
  { href: '/review/reports', label: 'Reports' },
  { href: '/afterwards', label: 'How repairs held' },
  { href: '/review/words', label: 'Words' },
  { href: '/log', label: 'Log' },
];

const FOR_KEEPERS = [
  { href: '/review/health', label: 'Health' },
  { href: '/keeper', label: 'Accounts' },
];

/** The ways between the pages of whoever looks after the casebook; nothing for anybody else. */
export async function ReviewNav() {
  const { value: account } = await attempt(() => serverCaller().account.me());
  if (account === null || !isAtLeast(account.role, 'moderator')) return null;
  return <SiblingLinks name="Review" pages={account.role === 'keeper' ? [...FOR_MODERATORS, ...FOR_KEEPERS] : FOR_MODERATORS} />;
}
