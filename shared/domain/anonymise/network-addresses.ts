import { allMatches } from './all-matches';
import type { FindSpans } from './personal-detail';

const OCTET = '(?:25[0-5]|2[0-4]\\d|1?\\d?\\d)';
/** Four numbers with dots are a version where the word before says so. */
const VERSION = '(?<!\\b(?:v|ver|version|rev|revision|firmware|release|build)\\.? ?)';
const IPV4 = new RegExp(`${VERSION}(?<![\\w.])(?:${OCTET}(?:\\.|\\[\\.\\]|\\(\\.\\)|\\[dot\\]| dot | \\. ?)){3}${OCTET}(?![\\w]|\\.\\d)(?:/\\d{1,2}\\b|:\\d{1,5}\\b)?`, 'giu');
/** RFC 4291 section 2.2: eight groups, or fewer around one "::". Other text between colons is sorted out below. */
const IPV6 = /(?<![\w:.])(?:[0-9a-f]{0,4}:){2,7}[0-9a-f]{0,4}(?![\w:])/giu;
const HARDWARE =
  /(?<![\w:-])(?:(?:[0-9a-f]{2}:){5}(?:[0-9a-f]{2}:[0-9a-f]{2}:)?[0-9a-f]{2}|(?:[0-9a-f]{2}-){5}(?:[0-9a-f]{2}-[0-9a-f]{2}-)?[0-9a-f]{2}|(?:[0-9a-f]{4}\.){2}[0-9a-f]{4})(?![\w:-])/giu;
/** Six bytes in any way of writing, where words say what they are. */
const BYTES = String.raw`(?:[0-9a-f]{12}|[0-9a-f]{6}[-:. ][0-9a-f]{6}|[0-9a-f]{4}[-:. ][0-9a-f]{4}[-:. ][0-9a-f]{4}|[0-9a-f]{3}(?:[.:-][0-9a-f]{3}){3}|[0-9a-f]{1,2}(?:[-:. ][0-9a-f]{1,2}){5}(?:[-:. ][0-9a-f]{2}){0,2})(?![0-9a-z])`;
const HARDWARE_WORD = String.raw`(?<!\p{L})(?:mac|hardware|hw|ethernet|node|station|physical|burned-in|lan|wlan|wi-?fi|network(?: card| adapter)?|nic|netzwerkkarte|carte réseau)`;
const CUED_HARDWARE = new RegExp(`${HARDWARE_WORD}(?:[ -]?(?:address|adress|addr|adresse|adres|adr|id|no|number|nr)\\.?)?(?: (?:is|was|of|reads|on|the|its|ist|says|card|label|sticker|board|back|prom|rom|printed|it|shows|showed|as|set|to|from)){0,5}[ :=#."'(]{0,4}(?<it>${BYTES})`, 'dgiu');
const HARDWARE_NAMED_AFTER = new RegExp(`(?<![\\w:.-])(?<it>${BYTES})(?: (?:is|was|as|=)(?: the| its)?)?,? \\(?(?:mac|hardware address|ethernet address)\\b`, 'dgiu');
const MAPPED = new RegExp(`(?<![\\w:.])::(?:ffff:)?(?:${OCTET}\\.){3}${OCTET}(?![\\w]|\\.\\d)`, 'giu');

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
  ...allMatches(text, MAPPED, 'ip-address'),
  ...allMatches(text, CUED_HARDWARE, 'hardware-address'),
  ...allMatches(text, HARDWARE_NAMED_AFTER, 'hardware-address'),
];
