import Link from 'next/link';
import { Fragment } from 'react';
import { inSentence } from '../../../_components/words';

type WordLink = { id: string; label: string; designator?: string | null; href: string };

/** Words of the vocabulary inside a sentence, each leading to its page: `one (U3), two and three`. */
export function WordLinks({ words }: { words: readonly WordLink[] }) {
  return words.map(({ id, label, designator, href }, at) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the same word can come twice in one step, and the order never changes
    <Fragment key={`${id} ${at}`}>
      {at === 0 ? '' : at === words.length - 1 ? ' and ' : ', '}
      <Link href={href} prefetch={false}>
        {inSentence(label)}
      </Link>
      {designator ? ` (${designator})` : ''}
    </Fragment>
  ));
}
