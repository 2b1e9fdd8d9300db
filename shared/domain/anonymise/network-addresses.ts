import { allMatches } from './all-matches';
import type { FindSpans } from './personal-detail';

const OCTET = '(?:25[0-5]|2[0-4]\\d|1?\\d?\\d)';
/** Four numbers with dots are a version where the word before says so. */
const VERSION = '(?<!\\b(?:v|ver|version|rev|revision|firmware|release|build)\\.? ?)';
const IPV4 = new RegExp(`${VERSION}(?<![\\w.])(?:${OCTET}\\.){3}${OCTET}(?![\\w]|\\.\\d)(?:/\\d{1,2}\\b)?`, 'giu');
/** RFC 4291 section 2.2: eight groups, or fewer around one "::". Other text between colons is sorted out below. */
const IPV6 = /(?<![\w:.])(?:[0-9a-f]{0,4}:){2,7}[0-9a-f]{0,4}(?![\w:])/giu;
const HARDWARE =
  /(?<![\w:-])(?:(?:[0-9a-f]{2}:){5}(?:[0-9a-f]{2}:[0-9a-f]{2}:)?[0-9a-f]{2}|(?:[0-9a-f]{2}-){5}(?:[0-9a-f]{2}-[0-9a-f]{2}-)?[0-9a-f]{2}|(?:[0-9a-f]{4}\.){2}[0-9a-f]{4})(?![\w:-])/giu;
const CUED_HARDWARE = /\b(?:mac|hardware|ethernet) (?:address|addr|id)?[ :=]{0,3}(?<it>[0-9a-f]{12})\b/dgiu;

function isIpv6(text: string): boolean {
  const groups = text.split(':');
  const filled = groups.filter((group) => group !== '').length;
  const gaps = text.split('::').length - 1;
  return gaps === 0 ? filled === 8 && groups.length === 8 : gaps === 1 && filled >= 2 && filled < 8 && !/:::|^:[^:]|[^:]:$/u.test(text);
}

/** IP addresses of both versions, and hardware addresses of 6 or 8 bytes. */
export const networkAddresses: FindSpans = (text) => [
  ...allMatches(text, IPV4, 'ip-address'),
  ...allMatches(text, IPV6, 'ip-address').filter(({ start, end }) => isIpv6(text.slice(start, end))),
  ...allMatches(text, HARDWARE, 'hardware-address'),
  ...allMatches(text, CUED_HARDWARE, 'hardware-address'),
];
