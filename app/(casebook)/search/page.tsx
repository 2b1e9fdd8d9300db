import type { Metadata } from 'next';
import Link from 'next/link';
import type { SearchParams } from '../../_address/question';
import { askedSearch, readSearch, searchHref } from '../../_address/search-address';
import { attempt } from '../../_casebook/attempt';
import { Trouble } from '../../_components/trouble';
import { serverCaller } from '../../_trpc/server';
import '../../_styles/search.css';
import { FoundCase } from './_parts/found-case';
import { valueWords } from './_parts/filter-words';
import { SearchForm } from './_parts/search-form';
import { SearchTold } from './_parts/search-told';

type PageProps = { searchParams: Promise<SearchParams> };

export async function generateMetadata({ searchParams }: PageProps): Promise<Metadata> {
  const { text } = readSearch(await searchParams);
  return { title: text.trim() === '' ? 'Search' : `${text.slice(0, 80)} · Search`, robots: { index: false } };
}

/** Cases by words and filters. */
export default async function SearchPage({ searchParams }: PageProps) {
  const search = readSearch(await searchParams);
  const { value, trouble } = await attempt(async () => {
    const { casebook, search: cases } = serverCaller();
    const [answer, vocabulary, devices] = await Promise.all([
      cases.cases(askedSearch(search)),
      casebook.listVocabulary(),
      casebook.listDevices(),
    ]);
    return { answer, words: valueWords(vocabulary, devices) };
  });
  if (trouble) return <Trouble kind={trouble} again={searchHref(search)} />;
  const { answer, words } = value;
  return (
    <>
      <h1>Search the cases</h1>
      <SearchForm search={search} facets={answer.facets} words={words} />
      <SearchTold search={search} answer={answer} />
      <ol className="rows section">
        {answer.hits.map((found) => (
          <FoundCase key={found.id} found={found} />
        ))}
      </ol>
      <p className="pager">
        {search.from === null ? null : (
          <Link href={searchHref({ ...search, from: null })} prefetch={false} className="press">
            From the beginning
          </Link>
        )}
        {answer.next === null ? null : (
          <Link href={searchHref({ ...search, from: answer.next })} prefetch={false} className="press" rel="next">
            More cases
          </Link>
        )}
      </p>
    </>
  );
}
