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

function suggestionFor({ kind }: FoundSpan, found: string): string {
  return kind === 'exact-date' ? monthOfDate(found) : `[${DETAIL_LABELS[kind]}]`;
}
