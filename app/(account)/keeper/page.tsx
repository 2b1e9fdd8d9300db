import type { Metadata } from 'next';
import Form from 'next/form';
import { notFound, redirect } from 'next/navigation';
import { firstOf, type SearchParams } from '../../_address/question';
import { formatCounted, formatMonth } from '../../_components/format-figures';
import { ReviewNav } from '../../_components/review-nav';
import { serverCaller } from '../../_trpc/server';
import { AccountRow } from '../_parts/account-row';

export const metadata: Metadata = { title: 'Accounts', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

/** Every account, for keepers. */
export default async function KeeperPage({ searchParams }: PageProps) {
  const wanted = (firstOf(await searchParams, 'name') ?? '').trim().toLowerCase();
  const { account } = serverCaller();
  const me = await account.me();
  if (me === null) redirect('/sign-in?next=/keeper');
  if (me.role !== 'keeper') notFound();
  const accounts = (await account.list()).filter(({ name }) => name.toLowerCase().includes(wanted));
  return (
    <div className="account-page">
      <ReviewNav />
      <h1>Accounts</h1>
      <p className="lead">Who may do less from now on is signed out at once. Names are seen here alone.</p>
      <Form action="/keeper" className="account-keys">
        <div className="account-field">
          <label htmlFor="account-name">Part of a name</label>
          <input id="account-name" name="name" defaultValue={wanted} autoComplete="off" autoCapitalize="none" />
        </div>
        <button type="submit" className="press">
          Show
        </button>
      </Form>
      <p role="status">{formatCounted(accounts.length, 'account')}</p>
      <ul className="account-rows">
        {accounts.map(({ id, name, role, createdAt }) => (
          <AccountRow
            key={id}
            account={{ id, name, role }}
            since={formatMonth(createdAt.toISOString().slice(0, 7))}
            isOwn={name === me.name}
          />
        ))}
      </ul>
    </div>
  );
}
