import type { PersonalDetail } from './personal-detail';

/**
 * The text with each detail's suggestion in its place. Details have to be sorted and apart, as they are found. A month or a year
 * that would come to stand beside a digit goes into brackets, so that the two do not read as a date again.
 */
export function replaceDetails(text: string, details: readonly Pick<PersonalDetail, 'start' | 'end' | 'suggestion'>[]): string {
  let result = '';
  let from = 0;
  for (const { start, end, suggestion } of details) {
    result += text.slice(from, start);
    const besideDigit = /\d(?:st|nd|rd|th)?[\s.,/-]*(?:of\s+)?$/i.test(result.slice(-12)) || /^[\s.,/-]*\d/.test(text.slice(end, end + 12));
    result += besideDigit && !suggestion.startsWith('[') ? `[${suggestion}]` : suggestion;
    from = end;
  }
  return result + text.slice(from);
}
