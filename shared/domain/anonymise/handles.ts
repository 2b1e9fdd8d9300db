import { allMatches } from './all-matches';
import type { FindSpans } from './personal-detail';

/** "@" before a word, as people are addressed on line; "@U5" and "@ 5 V" say where and at what. */
const AT_HANDLE = /(?<![\w@.+/)\]])@(?<it>[A-Za-z_][A-Za-z0-9_.-]{1,38}[A-Za-z0-9_])(?!@)/dgu;
const DESIGNATOR = /^[A-Z]{1,4}\d{1,4}[A-Z]?(?:[.,-].*)?$/iu;
const MEASURED = /^(?:pin|the|idle|load|rest|hot|cold|no|full|about|least|start|room|approx)/iu;
const PATH_HANDLE = /(?<![\w/])\/?u\/[A-Za-z0-9_-]{3,30}(?!\w)/gu;
/** The name with four digits that some chat services give. */
const NUMBERED = /(?<!\w)[A-Za-z][\w.]{2,31}#\d{4}(?!\w)/gu;
const CUE = String.raw`\b(?:(?:user ?name|screen ?name|nick(?:name)?|handle|login|gamertag|callsign|call sign|alias|pseudo|benutzername|user id)(?: (?:there|here|on \w+|of mine))?(?: (?:is|was|of|are|ist|lautet))?|(?:irc|chat|forum|messenger|message board) ?(?:user|name|id|nick|handle|account|seller)?(?: (?:is|was))?(?= ?[:=]))[ :=]{1,3}["'“]?@?`;
const CUED = new RegExp(`${CUE}(?<it>[A-Za-z0-9_][A-Za-z0-9_.-]{1,38}[A-Za-z0-9_])`, 'dgiu');
const GO_BY = /\b(?:I(?:'m| am|’m)|go by|goes by|known as|[Pp]osting as|[Pp]osted as|posts as|signed up as|find me as|seller|user|member|poster)(?: (?:called|named))? ["'“]?@?(?<it>[A-Za-z][A-Za-z0-9.-]*(?:_[A-Za-z0-9_.-]+|(?<=[a-z]{3})\d{2,})[A-Za-z0-9_]*)(?![A-Za-z0-9_])/dgu;
const ORDINARY = /^(?:is|was|the|a|an|it|and|or|on|not|of|there|here|to|for|with|off|out|in|port|select|strobe|enable|lost|missing|broken|unknown|prompt|screen|chip|line|pin|button|input|output|ground)$/iu;

/** Names under which people write on line. */
export const handles: FindSpans = (text) => [
  ...allMatches(text, AT_HANDLE, 'handle')
    .filter(({ start, end }) => !DESIGNATOR.test(text.slice(start, end)) && !MEASURED.test(text.slice(start, end)))
    .map((span) => ({ ...span, start: span.start - 1 })),
  ...allMatches(text, PATH_HANDLE, 'handle'),
  ...allMatches(text, NUMBERED, 'handle'),
  ...allMatches(text, CUED, 'handle').filter(({ start, end }) => !ORDINARY.test(text.slice(start, end))),
  ...allMatches(text, GO_BY, 'handle'),
];
