import type { WordKind } from '../../../../shared/schemas/word-edit';
import { formatCount } from '../../../_components/format-figures';
import { takeAsSynonym } from '../_actions/change-words';
import { KIND_WORDS } from './kind-words';
import { WordForm } from './word-form';

type Near = { kind: WordKind; slug: string; label: string };
type UnreadWordsProps = { unread: readonly { word: string; count: number; near: readonly Near[] }[]; leastShown: number };

/** What look-ups could not read, the most frequent first. */
export function UnreadWords({ unread, leastShown }: UnreadWordsProps) {
  return (
    <>
      <p className="section-sub">
        Counted by month over the last year, without who asked; a word is shown from {leastShown} look-ups on. What may give a
        person away is not counted.
      </p>
      {unread.length === 0 ? <p>Nothing was left unread so often.</p> : null}
      <ul className="rows">
        {unread.map(({ word, count, near }) => (
          <li className="row" key={word}>
            <h3>
              {word} <span className="figure">{formatCount(count)}</span>
            </h3>
            {near.length === 0 ? (
              <p className="soft">No entry comes near. It may need one of its own.</p>
            ) : (
              <WordForm
                action={takeAsSynonym}
                hidden={{ word }}
                submit="Take it as a synonym"
                about={word}
                doneText="It is a synonym now."
                fields={[
                  {
                    name: 'synonyms',
                    label: 'Synonym of',
                    kind: 'choice',
                    options: near.map(({ kind, slug, label }) => ({
                      value: `${kind}/${slug}`,
                      label: `${label} (${KIND_WORDS[kind].one})`,
                    })),
                  },
                ]}
              />
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
