import type { WordKind } from '../../../../shared/schemas/word-edit';
import { changeSynonyms, mergeEntries, retireEntry, rewordEntry } from '../_actions/change-words';
import { KIND_WORDS } from './kind-words';
import { WordForm } from './word-form';

type Entry = { slug: string; label: string; meaning: string; synonyms: string[]; retired?: true | undefined };
type EntryCareProps = { kind: WordKind; entry: Entry; others: readonly Entry[] };

/** Everything that can be done with one entry. */
export function EntryCare({ kind, entry, others }: EntryCareProps) {
  const hidden = { kind, slug: entry.slug };
  const options = others
    .filter((other) => other.slug !== entry.slug && !other.retired)
    .map((other) => ({ value: other.slug, label: other.label }));
  return (
    <section className="section" aria-labelledby="entry">
      <h2 id="entry">
        {entry.label}
        {entry.retired ? ' (retired)' : ''}
      </h2>
      <p className="section-sub">
        A {KIND_WORDS[kind].one}, {entry.slug}. {entry.meaning}
      </p>
      <div className="word-care">
        <div>
          <h3>Reword</h3>
          <WordForm
            action={rewordEntry}
            hidden={hidden}
            submit="Reword it"
            doneText="It is reworded. The old label is a synonym now."
            fields={[
              { name: 'label', label: 'Label', kind: 'line', value: entry.label },
              { name: 'meaning', label: 'Meaning, in one sentence', kind: 'area', value: entry.meaning },
            ]}
          />
        </div>
        <div>
          <h3>Synonyms</h3>
          <WordForm
            action={changeSynonyms}
            hidden={{ ...hidden, before: entry.synonyms.join('\n') }}
            submit="Keep these synonyms"
            doneText="The synonyms are changed, and look-ups read them."
            fields={[
              {
                name: 'synonyms',
                label: 'What else it goes by',
                kind: 'area',
                hint: 'One a line, as people say it at a bench.',
                value: entry.synonyms.join('\n'),
              },
            ]}
          />
        </div>
        <div>
          <h3>Merge</h3>
          <WordForm
            action={mergeEntries}
            hidden={hidden}
            submit="Merge"
            doneText="They are one entry now. It can be undone below."
            fields={[
              {
                name: 'into',
                label: 'Merge it into',
                kind: 'choice',
                hint: 'Its cases count there, and what it goes by is read as that. The cases keep their words.',
                options,
              },
            ]}
          />
        </div>
        {entry.retired ? null : (
          <div>
            <h3>Retire</h3>
            <p className="soft small">It is not read and not offered any more. Cases keep it.</p>
            <WordForm action={retireEntry} hidden={hidden} submit="Retire it" doneText="It is retired. It can be undone below." />
          </div>
        )}
      </div>
    </section>
  );
}
