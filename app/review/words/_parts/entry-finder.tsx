import Form from 'next/form';
import Link from 'next/link';
import type { WordKind } from '../../../../shared/schemas/word-edit';
import { KIND_WORDS, KINDS } from './kind-words';

type EntryFinderProps = {
  kind: WordKind;
  text: string;
  found: readonly { slug: string; label: string; retired?: true | undefined }[];
};

/** Finds the entry to work on, by its kind and what it goes by; a plain GET form. */
export function EntryFinder({ kind, text, found }: EntryFinderProps) {
  return (
    <>
      <Form action="/review/words" className="ask device-filter" key={`${kind} ${text}`}>
        <div className="ask-field">
          <label htmlFor="kind">Kind</label>
          <select id="kind" name="kind" defaultValue={kind}>
            {KINDS.map((name) => (
              <option key={name} value={name}>
                {KIND_WORDS[name].many}
              </option>
            ))}
          </select>
        </div>
        <div className="ask-field">
          <label htmlFor="named">What it goes by</label>
          <input id="named" name="named" type="text" defaultValue={text} />
        </div>
        <button type="submit" className="press">
          Find
        </button>
      </Form>
      {text !== '' && found.length === 0 ? <p>No entry goes by that.</p> : null}
      <ul className="word-finds">
        {found.map((word) => (
          <li key={word.slug}>
            <Link
              href={`/review/words?${new URLSearchParams({ kind, entry: word.slug })}#entry`}
              prefetch={false}
              className="press"
            >
              {word.label}
              {word.retired ? ' (retired)' : ''}
            </Link>
          </li>
        ))}
      </ul>
    </>
  );
}
