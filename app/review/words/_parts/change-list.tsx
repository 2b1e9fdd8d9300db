import { formatMonth } from '../../../_components/format-figures';
import { undoChange } from '../_actions/change-words';
import { WordForm } from './word-form';

type ChangeListProps = { edits: readonly { revision: number; month: string; undone: boolean; text: string }[] };

/** What was changed, the latest first, each with its undoing. */
export function ChangeList({ edits }: ChangeListProps) {
  if (edits.length === 0) return <p>The vocabulary is as it ships.</p>;
  return (
    <ol className="rows word-changes">
      {edits.map(({ revision, month, undone, text }) => (
        <li className="row" key={revision} value={revision}>
          <p>
            <span className="figure">{revision}</span> {text} <span className="soft">({formatMonth(month)})</span>
          </p>
          {undone ? (
            <p className="soft">Undone.</p>
          ) : (
            <WordForm
              action={undoChange}
              hidden={{ revision: String(revision) }}
              submit="Undo"
              about={text}
              doneText="It is undone: everything is as it would be without it."
            />
          )}
        </li>
      ))}
    </ol>
  );
}
