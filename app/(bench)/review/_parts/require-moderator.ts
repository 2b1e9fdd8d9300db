import 'server-only';
import { notFound, redirect } from 'next/navigation';
import { isAtLeast } from '../../../../shared/domain/can/role';
import { serverCaller } from '../../../_trpc/server';

/** Sends who is not signed in to sign in, and shows these pages to moderators alone. The procedures decide for themselves. */
export async function requireModerator(path: string): Promise<void> {
  const account = await serverCaller().account.me();
  if (account === null) redirect(`/sign-in?next=${encodeURIComponent(path)}`);
  if (!isAtLeast(account.role, 'moderator')) notFound();
}
