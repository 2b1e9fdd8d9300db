/** What can give a person away in bench text. */
export const DETAIL_KINDS = [
  'mail-address',
  'link',
  'account-number',
  'phone-number',
  'hardware-address',
  'ip-address',
  'serial-number',
  'street-address',
  'exact-date',
  'handle',
  'personal-name',
  'place',
] as const;
export type DetailKind = (typeof DETAIL_KINDS)[number];

/** `direct` says who or where by itself; `possible` may be one and wants a look. */
export type Certainty = 'direct' | 'possible';

/** A part of a text, as a rule found it: [start, end) in UTF-16 units. */
export type FoundSpan = { kind: DetailKind; start: number; end: number; certainty: Certainty };

/** A part of a text that can give a person away, and what could stand in its place. */
export type PersonalDetail = FoundSpan & { text: string; suggestion: string };

/** Lower-case words of the trade: never a person or a place by themselves. */
export type KnownWords = ReadonlySet<string>;

/** One family of rules. */
export type FindSpans = (text: string, known: KnownWords) => FoundSpan[];

export const DETAIL_LABELS: Record<DetailKind, string> = {
  'mail-address': 'mail address',
  link: 'link',
  'account-number': 'account number',
  'phone-number': 'phone number',
  'ip-address': 'IP address',
  'hardware-address': 'hardware address',
  'serial-number': 'serial number',
  'street-address': 'street address',
  'exact-date': 'exact date',
  handle: 'handle',
  'personal-name': 'name',
  place: 'place',
};
