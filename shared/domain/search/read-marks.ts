import type { SearchHit } from '../../schemas/search';
import { HIGHLIGHT_CLOSE, HIGHLIGHT_OPEN } from './search-document';

const MARKS = new RegExp(`([${HIGHLIGHT_OPEN}${HIGHLIGHT_CLOSE}])`, 'u');

/** A marked text as an engine returns it, taken apart: the plain text on one line, and where the marks stood. */
export function readMarks(marked: string): Pick<SearchHit, 'snippet' | 'highlights'> {
  let snippet = '';
  let start: number | null = null;
  const highlights: [number, number][] = [];
  for (const piece of marked.replaceAll(/\s+/gu, ' ').trim().split(MARKS)) {
    if (piece === HIGHLIGHT_OPEN) start ??= snippet.length;
    else if (piece === HIGHLIGHT_CLOSE) {
      if (start !== null && start < snippet.length) highlights.push([start, snippet.length]);
      start = null;
    } else snippet += piece;
  }
  return { snippet, highlights };
}
