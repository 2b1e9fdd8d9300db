import { DETAIL_LABELS, type DetailKind } from '../../../../shared/domain/anonymise/personal-detail';

type Mark = { field: string; kind: string; start: number; end: number };

/** A text with its marks in place: each personal detail that was kept, and what kind it is. */
export function MarkedText({ text, field, marks }: { text: string; field: string; marks: readonly Mark[] }) {
  const here = marks.filter((mark) => mark.field === field && mark.end <= text.length).sort((a, b) => a.start - b.start);
  const parts = here.flatMap((mark, i) => {
    const from = i === 0 ? 0 : (here[i - 1]?.end ?? 0);
    const label = DETAIL_LABELS[mark.kind as DetailKind] ?? mark.kind;
    return [
      text.slice(from, mark.start),
      <mark key={`${mark.start} ${mark.kind}`} className="detail-mark">
        {text.slice(mark.start, mark.end)} <small>({label}?)</small>
      </mark>,
    ];
  });
  return (
    <>
      {parts}
      {text.slice(here.at(-1)?.end ?? 0)}
    </>
  );
}
