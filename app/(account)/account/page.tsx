import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { serverCaller } from '../../_trpc/server';
import { changePassword, deleteAccount, signOut, signOutEverywhere } from '../_actions/own-account';
import { NEW_PASSWORD_FIELD, OLD_PASSWORD_FIELD, PASSWORD_FIELD } from '../_parts/account-fields';
import { AccountForm } from '../_parts/account-form';
import { ROLE_WORDS } from '../_parts/role-words';

export const metadata: Metadata = { title: 'Your account', robots: { index: false } };

export default async function AccountPage() {
  const account = await serverCaller().account.me();
  if (account === null) redirect('/sign-in?next=/account');
  return (
    <div className="account-page">
      <h1>Your account</h1>
      <p className="lead">
        Signed in as <strong>{account.name}</strong>: {account.role}, {ROLE_WORDS[account.role]}.
      </p>
      {account.role === 'moderator' || account.role === 'keeper' ? (
        <p>
          <Link href="/afterwards" className="back" prefetch={false}>
            Reports on how repairs held
          </Link>
          {account.role === 'keeper' ? (
            <>
              {' · '}
              <Link href="/keeper" className="back" prefetch={false}>
                Accounts
              </Link>
            </>
          ) : null}
        </p>
      ) : null}
      <AccountForm action={signOut} fields={[]} submit="Sign out" />
      <section className="section" aria-labelledby="password-head">
        <h2 id="password-head">Change the password</h2>
        <p className="section-sub">Signs you out everywhere but here.</p>
        <AccountForm
          action={changePassword}
          fields={[OLD_PASSWORD_FIELD, NEW_PASSWORD_FIELD]}
          submit="Change the password"
          doneText="The password is changed."
        />
      </section>
      <section className="section" aria-labelledby="everywhere-head">
        <h2 id="everywhere-head">Sign out everywhere</h2>
        <p className="section-sub">For a borrowed or lost computer: ends every session of this account, this one too.</p>
        <AccountForm action={signOutEverywhere} fields={[]} submit="Sign out everywhere" />
      </section>
      <section className="section" aria-labelledby="data-head">
        <h2 id="data-head">What the site holds about you</h2>
        <p className="section-sub">All of it, as one JSON file.</p>
        <a href="/api/account/download" className="press" download>
          Download it
        </a>
      </section>
      <section className="section" aria-labelledby="delete-head">
        <h2 id="delete-head">Delete the account</h2>
        <p className="section-sub">
          Removes the name, the password, all sessions, your drafts, and every case of yours that is not published. What is published
          stays, and nothing says whose it was. It cannot be undone. To let a case that waits go on without you, cut its link first.
        </p>
        <AccountForm action={deleteAccount} fields={[PASSWORD_FIELD]} submit="Delete the account" />
      </section>
    </div>
  );
}
