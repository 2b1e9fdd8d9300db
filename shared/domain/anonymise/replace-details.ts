import type { PersonalDetail } from './personal-detail';

/** The text with each detail's suggestion in its place. Details have to be sorted and apart, as they are found. */
export function replaceDetails(text: string, details: readonly Pick<PersonalDetail, 'start' | 'end' | 'suggestion'>[]): string {
  let result = '';
  let from = 0;
  for (const { start, end, suggestion } of details) {
    result += text.slice(from, start) + suggestion;
    from = end;
  }
  return result + text.slice(from);
}
