import type { FoundCase as Found } from '../../../../shared/schemas/search';
import { CaseLine } from '../../cases/_parts/case-line';

/** A found case, with the place where its words stand. */
export function FoundCase({ found: { item, snippet, highlights } }: { found: Found }) {
  return (
    <CaseLine item={item}>
      {snippet === '' ? null : (
        <p>
          <Marked text={snippet} marks={highlights} />
        </p>
      )}
    </CaseLine>
  );
}

/** A text with some stretches marked. */
function Marked({ text, marks }: { text: string; marks: readonly [number, number][] }) {
  return marks.flatMap(([start, end], at) => {
    const before = text.slice(marks[at - 1]?.[1] ?? 0, start);
    const rest = at === marks.length - 1 ? text.slice(end) : '';
    return [before, <mark key={start}>{text.slice(start, end)}</mark>, rest];
  }).concat(marks.length === 0 ? [text] : []);
}
