import type { Steps } from '../steps/steps';
import { accountNumbers } from './account-numbers';
import { exactDates, monthOfDate } from './exact-dates';
import { handles } from './handles';
import { mailAndLinks } from './mail-and-links';
import { mergeSpans } from './merge-spans';
import { namesAndPlaces } from './names-and-places';
import { networkAddresses } from './network-addresses';
import { DETAIL_LABELS, type FindSpans, type FoundSpan, type KnownWords, type PersonalDetail } from './personal-detail';
import { phoneNumbers } from './phone-numbers';
import { serialNumbers } from './serial-numbers';
import { streetAddresses } from './street-addresses';

const RULES: readonly FindSpans[] = [
  mailAndLinks,
  accountNumbers,
  phoneNumbers,
  networkAddresses,
  serialNumbers,
  streetAddresses,
  exactDates,
  handles,
  namesAndPlaces,
];

const NONE: KnownWords = new Set();

/**
 * What in a text can give a person away: sorted spans that do not overlap, each with what could stand in its place.
 * `known` are words of the trade (see `knownWordsOf`), which are never a person or a place by themselves. Countries are
 * not reported: mains voltages, keyboards and video norms are named after them.
 */
export function findPersonalDetails(text: string, known: KnownWords = NONE): PersonalDetail[] {
  return mergeSpans(RULES.flatMap((rule) => rule(text, known))).map((span) => ({
    ...span,
    text: text.slice(span.start, span.end),
    suggestion: suggestionFor(span, text.slice(span.start, span.end)),
  }));
}

/** Any words do: one text in Latin letters, one with a sign beyond them. */
const PLAIN_TEXTS = ['Grey from cold. A new chip, the 3rd one tried, cured it.', 'Grey from cold \u2013 a new chip, the 3rd one tried, cured it.'];

/**
 * Has every rule look at a text, a rule at a time. The engine translates a pattern at its first use and once more at its second, apart
 * for texts in Latin letters alone: a tenth of a second and more together, which the first text that is posted would wait for.
 */
export function* prepareRules(): Steps<void> {
  for (const text of PLAIN_TEXTS) {
    for (const rule of [...RULES, ...RULES]) {
      rule(text, NONE);
      yield;
    }
  }
}

function suggestionFor({ kind }: FoundSpan, found: string): string {
  return kind === 'exact-date' ? monthOfDate(found) : `[${DETAIL_LABELS[kind]}]`;
}
