import type { Metadata } from 'next';
import Link from 'next/link';
import { attempt } from '../../../_casebook/attempt';
import { Note } from '../../../_components/note';
import { serverCaller } from '../../../_trpc/server';
import { resetPassword } from '../../_actions/enter';
import { NEW_PASSWORD_FIELD } from '../../_parts/account-fields';
import { AccountForm } from '../../_parts/account-form';

export const metadata: Metadata = { title: 'New password', robots: { index: false } };

type PageProps = { params: Promise<{ token: string }> };

export default async function ResetPage({ params }: PageProps) {
  const { token } = await params;
  const { value: name, trouble } = await attempt(() => serverCaller().account.behindReset({ token }));
  return (
    <div className="account-page">
      <h1>New password</h1>
      {name ? (
        <>
          <p className="lead">
            For the account <strong>{name}</strong>. The link works once.
          </p>
          <AccountForm action={resetPassword} fields={[NEW_PASSWORD_FIELD]} submit="Set the new password" hidden={{ token }} />
        </>
      ) : (
        <Note kind="warning">
          {trouble
            ? 'The link could not be looked up just now. Try again in a quarter of an hour.'
            : 'This link does not work: it was used already, is older than a day, or was not copied whole. Ask whoever keeps this site for a new one.'}
        </Note>
      )}
      <p>
        <Link href="/sign-in" prefetch={false}>
          Sign in
        </Link>
      </p>
    </div>
  );
}
