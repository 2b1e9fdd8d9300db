import { findPersonalDetails } from '../../../shared/domain/anonymise/find-personal-details';
import type { DetailKind, KnownWords } from '../../../shared/domain/anonymise/personal-detail';

export type Line = { text: string; details: { kind: DetailKind; text: string }[] };
export type Score = { recall: number; flagged: number; missed: string[]; wrong: string[]; total: number; clean: number };

/** The stretch of the line that a detail of the set names; each of several equal ones takes the next place. */
function spansOf({ text, details }: Line): { start: number; end: number; label: string }[] {
  let from = 0;
  return details.map((detail) => {
    const start = text.indexOf(detail.text, from) >= 0 ? text.indexOf(detail.text, from) : text.indexOf(detail.text);
    if (start < 0) throw new Error(`"${detail.text}" is not in "${text}".`);
    from = start + detail.text.length;
    return { start, end: from, label: `${detail.kind} "${detail.text}" in "${text}"` };
  });
}

/**
 * A detail counts as found when a flagged span of any kind covers it. `recall` is the share found of all details of
 * the kinds asked for; `flagged` the share of clean lines with any span at all.
 */
export function scoreLines(lines: readonly Line[], known: KnownWords, kinds: (kind: DetailKind) => boolean = () => true): Score {
  const missed: string[] = [];
  const wrong: string[] = [];
  let total = 0;
  for (const line of lines) {
    const found = findPersonalDetails(line.text, known);
    const asked = spansOf({ ...line, details: line.details.filter(({ kind }) => kinds(kind)) });
    total += asked.length;
    for (const { start, end, label } of asked) if (!found.some((span) => span.start <= start && span.end >= end)) missed.push(label);
    if (line.details.length === 0 && found.length > 0) wrong.push(`${found.map((f) => `${f.kind} "${f.text}"`).join(', ')} in "${line.text}"`);
  }
  const clean = lines.filter(({ details }) => details.length === 0).length;
  return { recall: (total - missed.length) / total, flagged: wrong.length / clean, missed, wrong, total, clean };
}
