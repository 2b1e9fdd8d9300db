import { DETAIL_KINDS, type FoundSpan } from './personal-detail';

/**
 * Spans sorted and without overlaps: overlapping ones become one that covers them all, so that nothing that any rule
 * found is left over. It takes the kind that stands first in `DETAIL_KINDS` of those that are most certain.
 */
export function mergeSpans(spans: readonly FoundSpan[]): FoundSpan[] {
  const merged: FoundSpan[] = [];
  for (const span of [...spans].sort((a, b) => a.start - b.start || b.end - a.end)) {
    const last = merged.at(-1);
    if (last === undefined || span.start >= last.end) merged.push({ ...span });
    else {
      if (rank(span) < rank(last)) {
        last.kind = span.kind;
        last.certainty = span.certainty;
      }
      last.end = Math.max(last.end, span.end);
    }
  }
  return merged;
}

const rank = ({ kind, certainty }: FoundSpan) => DETAIL_KINDS.indexOf(kind) + (certainty === 'direct' ? 0 : DETAIL_KINDS.length);
