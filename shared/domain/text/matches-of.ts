/**
 * Every match of a global pattern, like `String.matchAll`. That one makes a copy of the pattern each time, which the engine
 * translates from its source unless it still remembers one that is alike: with the patterns for personal details a tenth of a
 * second and more, again and again on a busy site. Throws TypeError where the pattern is not global.
 */
export function matchesOf(text: string, pattern: RegExp): RegExpExecArray[] {
  if (!pattern.global) throw new TypeError('The pattern must be global.');
  const matches: RegExpExecArray[] = [];
  pattern.lastIndex = 0;
  for (let match = pattern.exec(text); match !== null; match = pattern.exec(text)) {
    matches.push(match);
    // An empty match would be found again: on to the next character, both halves of it.
    if (match[0] === '') pattern.lastIndex += (text.codePointAt(pattern.lastIndex) ?? 0) > 0xffff ? 2 : 1;
  }
  return matches;
}
