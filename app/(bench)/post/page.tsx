import type { Metadata } from 'next';
import Link from 'next/link';
import { caseIdSchema } from '../../../shared/schemas/case';
import { firstOf, questionHref, readQuestion, type SearchParams } from '../../_address/question';
import { attempt } from '../../_casebook/attempt';
import { Trouble } from '../../_components/trouble';
import { PostForm } from './_parts/post-form';
import { loadStart } from './_parts/load-start';
import '../../_styles/account.css';
import './post.css';

export const metadata: Metadata = { title: 'Post a case', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function PostPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const question = readQuestion(params);
  const id = caseIdSchema.safeParse(firstOf(params, 'draft'));
  const { value: start, trouble } = await attempt(() => loadStart(question, id.success ? id.data : null));
  return (
    <div className="post-page">
      <h1>Post a case</h1>
      <p className="lead">
        One unit’s repair, failed attempts included: they are evidence. It is reviewed before it is published.
      </p>
      {start?.signedIn ? (
        <p>
          <Link href="/submissions" className="back" prefetch={false}>
            Your submissions
          </Link>
        </p>
      ) : null}
      <noscript>
        <p className="note">This form needs scripts: it saves itself while you write.</p>
      </noscript>
      {trouble ? <Trouble kind={trouble} again={questionHref('/post', question)} /> : null}
      {start ? <PostForm start={start} /> : null}
    </div>
  );
}
