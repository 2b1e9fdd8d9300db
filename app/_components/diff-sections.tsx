import { Fragment } from 'react';

type Part = { state: 'same' | 'out' | 'in'; text: string };
type DiffSectionsProps = { sections: { name: string; parts: Part[] }[]; story?: string };

/** What differs between two versions: what went is struck through, what came is underlined, and both are said in words. */
export function DiffSections({ sections, story = 'In their words' }: DiffSectionsProps) {
  if (sections.length === 0) return <p>Nothing that is published differs.</p>;
  return sections.map(({ name, parts }) => (
    <Fragment key={name}>
      <h4>{name}</h4>
      {name === story ? (
        <p className="diff-story">
          {parts.map((part, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the parts never change their order
            <Changed key={i} part={part} />
          ))}
        </p>
      ) : (
        <ul className="diff-lines">
          {parts
            .filter((part) => part.state !== 'same')
            .map((part, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the parts never change their order
              <li key={i}>
                <Changed part={part} />
              </li>
            ))}
        </ul>
      )}
    </Fragment>
  ));
}

function Changed({ part: { state, text } }: { part: Part }) {
  if (state === 'same') return text;
  if (state === 'out') {
    return (
      <del className="diff-out">
        <span className="sr-only">taken out: </span>
        {text}
      </del>
    );
  }
  return (
    <ins className="diff-in">
      <span className="sr-only">put in: </span>
      {text}
    </ins>
  );
}
