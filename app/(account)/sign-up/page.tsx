import type { Metadata } from 'next';
import Link from 'next/link';
import { firstOf, type SearchParams } from '../../_address/question';
import { signUp } from '../_actions/enter';
import { NEW_NAME_FIELD, NEW_PASSWORD_FIELD } from '../_parts/account-fields';
import { AccountForm } from '../_parts/account-form';
import { safePath } from '../_parts/safe-path';

export const metadata: Metadata = { title: 'Sign up', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function SignUpPage({ searchParams }: PageProps) {
  const next = safePath(firstOf(await searchParams, 'next'));
  return (
    <div className="account-page">
      <h1>Sign up</h1>
      <p className="lead">A name and a password, nothing else: no mail address, no real name.</p>
      <AccountForm
        action={signUp}
        fields={[NEW_NAME_FIELD, { ...NEW_PASSWORD_FIELD, label: 'Password' }]}
        submit="Sign up"
        hidden={{ next }}
      >
        <p className="soft small">
          With no mail address there is no mail to you if the password is lost: whoever keeps the site can give you a link that
          sets a new one.
        </p>
      </AccountForm>
      <p>
        An account already?{' '}
        <Link href={`/sign-in?next=${encodeURIComponent(next)}`} prefetch={false}>
          Sign in
        </Link>
      </p>
    </div>
  );
}
