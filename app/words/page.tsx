import type { Metadata } from 'next';
import Link from 'next/link';
import { AREAS, areaSchema } from '../../shared/schemas/terms';
import { firstOf, questionHref, readQuestion, type SearchParams } from '../_address/question';
import { attempt } from '../_casebook/attempt';
import { Trouble } from '../_components/trouble';
import { AREA_WORDS } from '../_components/words';
import { serverCaller } from '../_trpc/server';
import { wordGroups } from './_parts/word-groups';
import { WordList } from './_parts/word-list';

export const metadata: Metadata = { title: 'Words' };

type PageProps = { searchParams: Promise<SearchParams> };

/** Everything that can be said in a look-up, by area, each with a link that adds it to the question at hand. */
export default async function WordsPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const question = readQuestion(params);
  const area = areaSchema.catch(AREAS[0]).parse(firstOf(params, 'area'));
  const { value: vocabulary, trouble } = await attempt(() => serverCaller().casebook.listVocabulary());
  return (
    <>
      <p>
        <Link href={questionHref('/', question)} prefetch={false} className="back">
          ← Back to the look-up
        </Link>
      </p>
      <h1>Words</h1>
      <p className="lead">What the casebook can be told. Press what you found: it joins your question.</p>
      <nav aria-label="Areas" className="areas">
        {AREAS.map((name) => (
          <Link
            key={name}
            href={questionHref('/words', question, [['area', name]])}
            prefetch={false}
            aria-current={name === area ? 'page' : undefined}
          >
            {AREA_WORDS[name]}
          </Link>
        ))}
      </nav>
      {trouble ? <Trouble kind={trouble} again={questionHref('/words', question)} /> : null}
      {vocabulary
        ? wordGroups(vocabulary, area).map((group) => <WordList key={group.head} group={group} question={question} />)
        : null}
    </>
  );
}
