import type { Metadata } from 'next';
import Link from 'next/link';
import { firstOf, type SearchParams } from '../../_address/question';
import { signIn } from '../_actions/enter';
import { NAME_FIELD, PASSWORD_FIELD } from '../_parts/account-fields';
import { AccountForm } from '../_parts/account-form';
import { DemoAccounts } from '../_parts/demo-accounts';
import { safePath } from '../_parts/safe-path';

export const metadata: Metadata = { title: 'Sign in', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

/** What just happened, where another form led here. */
function newsOf(params: SearchParams): string | null {
  const out = firstOf(params, 'out');
  if (firstOf(params, 'deleted')) return 'The account is deleted, and what the site held about it is gone.';
  if (firstOf(params, 'changed')) return 'The new password is set. Sign in with it.';
  if (out === 'everywhere') return 'You are signed out, here and everywhere else.';
  return out ? 'You are signed out.' : null;
}

export default async function SignInPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const next = safePath(firstOf(params, 'next'));
  const news = newsOf(params);
  return (
    <div className="account-page">
      <h1>Sign in</h1>
      {news ? <p role="status">{news}</p> : <p className="lead">Looking up needs no account. Posting a case does.</p>}
      <AccountForm action={signIn} fields={[NAME_FIELD, PASSWORD_FIELD]} submit="Sign in" hidden={{ next }} />
      <p>
        No account yet?{' '}
        <Link href={`/sign-up?next=${encodeURIComponent(next)}`} prefetch={false}>
          Sign up
        </Link>
      </p>
      <p className="soft">Password lost? Ask whoever keeps this site for a link that sets a new one.</p>
      <DemoAccounts />
    </div>
  );
}
