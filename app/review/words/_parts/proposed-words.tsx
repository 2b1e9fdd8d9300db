import { formatCounted } from '../../../_components/format-figures';
import { takeAsSynonym } from '../_actions/change-words';
import { KIND_WORDS } from './kind-words';
import { WordForm } from './word-form';
import type { WordKind } from '../../../../shared/schemas/word-edit';

type Near = { slug: string; label: string };
type ProposedWordsProps = {
  proposed: readonly { kind: WordKind; word: string; meaning: string; cases: number; near: readonly Near[] }[];
  /** Every entry of each kind, for those that none of the nearest is. */
  entries: Readonly<Record<WordKind, readonly Near[]>>;
};

/** Words that contributors missed, each with the entries that come nearest. */
export function ProposedWords({ proposed, entries }: ProposedWordsProps) {
  if (proposed.length === 0) return <p>Nothing is proposed that the vocabulary does not say already.</p>;
  return (
    <ul className="rows">
      {proposed.map((line) => (
        <li className="row" key={`${line.kind} ${line.word} ${line.meaning}`}>
          <h3>
            {line.word} <span className="soft">({KIND_WORDS[line.kind].one})</span>
          </h3>
          <p>
            {line.meaning} <span className="soft">Proposed with {formatCounted(line.cases, 'case')}.</span>
          </p>
          <WordForm
            action={takeAsSynonym}
            hidden={{ word: line.word }}
            submit="Take it as a synonym"
            about={line.word}
            doneText="It is a synonym now."
            fields={[
              { name: 'synonyms', label: 'Synonym of', kind: 'choice', options: optionsFor(line.kind, line.near, entries) },
            ]}
          />
        </li>
      ))}
    </ul>
  );
}

/** The nearest first, then all the others. */
function optionsFor(kind: WordKind, near: readonly Near[], entries: ProposedWordsProps['entries']) {
  const first = new Set(near.map(({ slug }) => slug));
  const ordered = [...near, ...entries[kind].filter(({ slug }) => !first.has(slug))];
  return ordered.map(({ slug, label }) => ({ value: `${kind}/${slug}`, label: first.has(slug) ? `${label} (near)` : label }));
}
