import { withFinding } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import type { WordGroup } from './word-groups';

type WordListProps = { group: WordGroup; question: Question };

/** The words of one kind, each with its meaning and a link for everything that can be said about it. */
export function WordList({ group, question }: WordListProps) {
  if (group.words.length === 0) return null;
  return (
    <section className="section">
      <h2>{group.head}</h2>
      <ul className="rows">
        {group.words.map((word) => (
          <li className="row word" key={word.id} id={word.id}>
            <h3>{word.label}</h3>
            <p className="soft">{word.meaning}</p>
            <p className="word-values">
              {word.findings.map(({ finding, label }) => (
                <a key={finding.value} href={questionHref('/', withFinding(question, finding))} className="press press-small">
                  <span className="sr-only">{word.label}: </span>
                  {label}
                </a>
              ))}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
