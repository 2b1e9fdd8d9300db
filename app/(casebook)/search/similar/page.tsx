import type { Metadata } from 'next';
import Link from 'next/link';
import { questionHref, readQuestion, type SearchParams } from '../../../_address/question';
import { attempt } from '../../../_casebook/attempt';
import { SimilarList } from '../../../_components/similar-list';
import { Trouble } from '../../../_components/trouble';
import { serverCaller } from '../../../_trpc/server';

export const metadata: Metadata = { title: 'Cases like yours', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

/** Every case that is much like the unit of a look-up, and why each is there. */
export default async function SimilarPage({ searchParams }: PageProps) {
  const question = readQuestion(await searchParams);
  const back = questionHref('/', question);
  const { value: cases, trouble } = await attempt(() => serverCaller().search.similar(question));
  if (trouble) return <Trouble kind={trouble} again={back} />;
  return (
    <>
      <p>
        <Link href={back} prefetch={false} className="back">
          ← Back to the look-up
        </Link>
      </p>
      <h1>Cases like yours</h1>
      <p className="lead">
        The fifty most like your unit: what they share weighs by how telling it is of the cause, contradictions count against.
      </p>
      {cases.length === 0 ? <p>No case on record shares a finding with yours. Say more of what you see in the look-up.</p> : null}
      <SimilarList cases={cases} />
    </>
  );
}
