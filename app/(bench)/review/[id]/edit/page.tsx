import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { caseIdSchema } from '../../../../../shared/schemas/case';
import type { SearchParams } from '../../../../_address/question';
import { isRefusal, serverCaller } from '../../../../_trpc/server';
import { EditForm } from '../../_parts/edit-form';
import { readFilter, reviewHref } from '../../_parts/queue-address';
import { requireModerator } from '../../_parts/require-moderator';
import '../../../../_styles/account.css';
import '../../../post/post.css';
import '../../review.css';

export const metadata: Metadata = { title: 'Edit a case', robots: { index: false } };

type PageProps = { params: Promise<{ id: string }>; searchParams: Promise<SearchParams> };

async function load(id: string) {
  try {
    const { casebook, review } = serverCaller();
    const item = await review.editForm({ id });
    return { ...item, vocabulary: await casebook.listVocabulary(), catalogue: await casebook.getCatalogue() };
  } catch (error) {
    if (isRefusal(error, 'review-not-found')) return null;
    throw error;
  }
}

export default async function EditCasePage({ params, searchParams }: PageProps) {
  const { id } = await params;
  await requireModerator(`/review/${id}/edit`);
  const start = caseIdSchema.safeParse(id).success ? await load(id) : null;
  if (start === null) notFound();
  const filter = readFilter(await searchParams);
  return (
    <div className="post-page">
      <h1>{start.published ? 'Correct a published case' : 'Accept with edits'}</h1>
      <p className="lead">
        {start.published ? 'The version so far is kept; moderators can read it.' : 'Whoever posted it sees what you changed beside their own words.'}
      </p>
      <noscript>
        <p className="note">This form needs scripts.</p>
      </noscript>
      <EditForm
        id={id}
        seen={start.seen}
        document={start.document}
        published={start.published}
        vocabulary={start.vocabulary}
        catalogue={start.catalogue}
        month={new Date().toISOString().slice(0, 7)}
        back={reviewHref(`/review/${id}`, filter)}
        queue={reviewHref('/review', filter, [['done', `edited.${id}`]])}
      />
    </div>
  );
}
