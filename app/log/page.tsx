import type { Metadata } from 'next';
import Link from 'next/link';
import { logFilterSchema, logKindSchema } from '../../shared/schemas/log';
import { firstOf, type SearchParams } from '../_address/question';
import { attempt } from '../_casebook/attempt';
import { Trouble } from '../_components/trouble';
import { formatCounted } from '../_components/format-figures';
import { ReviewNav } from '../_components/review-nav';
import { serverCaller } from '../_trpc/server';
import '../_styles/log.css';
import { LogFilterForm } from './_parts/log-filter-form';
import { logHref } from './_parts/log-href';
import { FullEntries } from './_parts/full-entries';
import { PublicEntries } from './_parts/public-entries';

export const metadata: Metadata = {
  title: 'Log of decisions',
  description: 'What the moderators decided, month by month, without names; each entry is chained to the one before.',
};

type PageProps = { searchParams: Promise<SearchParams> };

/** What was decided. Everybody sees it by month and without names, moderators in its exact order too. */
export default async function LogPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const kind = logKindSchema
    .nullable()
    .catch(null)
    .parse(firstOf(params, 'kind') || null);
  const filter = logFilterSchema.parse({ kind, page: readPage(firstOf(params, 'page')) });
  const { value, trouble } = await attempt(async () => {
    const caller = serverCaller();
    const role = (await caller.account.me())?.role;
    const mayAll = role === 'moderator' || role === 'keeper';
    const isFull = mayAll && firstOf(params, 'part') !== 'public';
    return isFull
      ? ({ mayAll, isFull: true, log: await caller.log.inOrder(filter) } as const)
      : ({ mayAll, isFull: false, log: await caller.log.byMonth(filter) } as const);
  });
  if (trouble) return <Trouble kind={trouble} again="/log" />;
  const { mayAll, isFull, log } = value;
  const part = mayAll && !isFull ? 'public' : null;
  return (
    <div className="log-page">
      {isFull ? <ReviewNav /> : null}
      <h1>Log of decisions</h1>
      <p className="lead">
        {isFull
          ? 'What was decided, the newest first. What it was about is told as long as the keys that say so are there.'
          : 'What was decided about cases and words, by month and without names. Nothing in it is ever changed: a mistake is put right by a new entry.'}
      </p>
      {mayAll ? (
        <nav aria-label="Parts of the log" className="areas">
          <Link href={logHref({ kind, part: null })} prefetch={false} aria-current={isFull ? 'page' : undefined}>
            In order
          </Link>
          <Link href={logHref({ kind, part: 'public' })} prefetch={false} aria-current={isFull ? undefined : 'page'}>
            As everybody sees it
          </Link>
        </nav>
      ) : null}
      <LogFilterForm counts={log.counts} kind={kind} part={part} />
      {log.entries.length === 0 ? <p>Nothing has been decided yet.</p> : null}
      {value.isFull ? <FullEntries entries={value.log.entries} /> : <PublicEntries entries={log.entries} />}
      <Pager page={log.page} pages={log.pages} kind={kind} part={part} />
      <section className="section" aria-labelledby="chain-head">
        <h2 id="chain-head">How to tell that it was not changed</h2>
        <p>
          Each of the {formatCounted(log.checkpoint?.seq ?? 0, 'entry', 'entries')} holds a hash (SHA-256) of all that it says and
          of the hash before it. Note this one down, and nobody can change what came before it without your seeing it:
        </p>
        <p className="figure checkpoint">{log.checkpoint ? `${log.checkpoint.seq}:${log.checkpoint.hash}` : 'no entry yet'}</p>
        <p className="soft">Whoever keeps this site checks it with "cli log verify --checkpoint" and that line.</p>
        {mayAll ? (
          <p className="onward">
            <a href="/api/log" className="press" download>
              Download the whole log
            </a>
          </p>
        ) : null}
      </section>
    </div>
  );
}

function readPage(text: string | null): number {
  const page = Number(text);
  return Number.isInteger(page) && page >= 1 && page <= 100_000 ? page : 1;
}

type PagerProps = { page: number; pages: number; kind: string | null; part: string | null };

function Pager({ page, pages, kind, part }: PagerProps) {
  if (pages <= 1) return null;
  return (
    <nav aria-label="Pages of the log" className="pager">
      {page > 1 ? (
        <Link href={logHref({ kind, part, page: page - 1 })} prefetch={false} className="press">
          Later entries
        </Link>
      ) : null}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages ? (
        <Link href={logHref({ kind, part, page: page + 1 })} prefetch={false} className="press">
          Earlier entries
        </Link>
      ) : null}
    </nav>
  );
}
