import { BRITISH, britishOf, IRREGULAR, SAME_WORD, stemOf, twinOf } from './spelling';

/** What every way of writing a word comes down to. */
function meetingPoint(word: string): string {
  return stemOf(twinOf(britishOf(word)));
}

let forms: Map<string, string[]> | null = null;

function formsByMeetingPoint(): Map<string, string[]> {
  const byPoint = new Map<string, Set<string>>();
  for (const table of [BRITISH, SAME_WORD, IRREGULAR]) {
    for (const word of Object.entries(table).flat()) {
      const point = meetingPoint(word);
      byPoint.set(point, (byPoint.get(point) ?? new Set<string>()).add(word));
    }
  }
  return new Map([...byPoint].map(([point, words]) => [point, [...words]]));
}

/**
 * Other ways to write a lower-case word that no suffix stemmer joins to it: spellings of either side of the ocean
 * ("gray" and "grey"), short forms and twins ("xtal" and "crystal"), irregular forms ("stuck" and "stick"). The word
 * itself is not among them.
 */
export function otherForms(word: string): string[] {
  forms ??= formsByMeetingPoint();
  const found = new Set([britishOf(word), twinOf(britishOf(word)), ...(forms.get(meetingPoint(word)) ?? [])]);
  found.delete(word);
  return [...found];
}

/** All groups of words that are written in several ways; every group has at least two. */
export function formGroups(): string[][] {
  forms ??= formsByMeetingPoint();
  return [...forms.values()].filter((group) => group.length > 1);
}
