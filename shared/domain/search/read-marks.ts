import type { SearchHit } from '../../schemas/search';
import { HIGHLIGHT_CLOSE, HIGHLIGHT_OPEN } from './search-document';

/** A marked text as an engine returns it, taken apart: the plain text on one line, and where the marks stood. */
export function readMarks(marked: string): Pick<SearchHit, 'snippet' | 'highlights'> {
  let snippet = '';
  let start: number | null = null;
  const highlights: [number, number][] = [];
  for (const character of marked.replaceAll(/\s+/gu, ' ').trim()) {
    if (character === HIGHLIGHT_OPEN) start ??= snippet.length;
    else if (character === HIGHLIGHT_CLOSE) {
      if (start !== null && start < snippet.length) highlights.push([start, snippet.length]);
      start = null;
    } else snippet += character;
  }
  return { snippet, highlights };
}
