import { LinkifyIt } from 'linkify-it';
import { allMatches } from './all-matches';
import type { FindSpans, FoundSpan } from './personal-detail';

/** Common top-level names beyond those the library knows, and the reserved ones of RFC 2606. */
const MORE_TLDS = ['example', 'test', 'invalid', 'localhost', 'blog', 'shop', 'dev', 'app', 'site', 'online', 'tech', 'store', 'wiki', 'club', 'page', 'space', 'website', 'zone', 'repair', 'parts', 'tools', 'cloud', 'link', 'live', 'net', 'fun', 'chat', 'forum', 'social', 'world', 'video', 'media', 'email', 'digital', 'works', 'pub', 'farm', 'xyz', 'top', 'berlin', 'london', 'scot', 'wales', 'cat', 'bzh', 'nyc', 'land', 'network', 'guru', 'house'];
const linkify = new LinkifyIt({ fuzzyLink: true }).tlds(MORE_TLDS, true);

/** Country endings that are words, or the endings of files: a missed blank after a full stop is no link. */
const WORD_ENDINGS = new Set(
  'am an as at be by do go he hi id in is it la me my no of on or pa so to us we md py rs sh pl ps cc ml st ad ai pr sc sd ac dc'.split(' '),
);

/** Longest address of RFC 5321: what is longer is no mail address, and looking for it costs time. */
const MAIL = /(?<![\w.+-])[\p{L}\p{N}_][\p{L}\p{N}_.+-]{0,63}@[\p{L}\p{N}][\p{L}\p{N}-]{0,62}(?:\.[\p{L}\p{N}][\p{L}\p{N}-]{0,62}){1,6}/gu;
const AT_WORD = 'at|ät|arobase|arrobase|arroba|chiocciola|apenstaartje|klammeraffe|małpa|snabel-?a|zavináč';
const DOT_WORD = 'dot|punkt|point|punto|punt|ponto|kropka|piste|tečka';
const BRACKETED_AT = String.raw`[ _-]?[([{<*] ?(?:${AT_WORD}|@|a t) ?[)\]}>*][ _-]?`;
const AT = String.raw`(?:${BRACKETED_AT}| (?:${AT_WORD}) | @ ?|@ |[-_](?:at)[-_])`;
const DOT_SPELT = String.raw`(?: ?[([{<*] ?(?:${DOT_WORD}|\.) ?[)\]}>*] ?| (?:${DOT_WORD}) | \. |[-_]dot[-_])`;
const DOT = String.raw`(?:${DOT_SPELT}|\.)`;
const NAME = String.raw`(?<![\p{L}\p{N}_.+-])[\p{L}\p{N}_](?:[\p{L}\p{N}_.+]|-(?!at[-_])){0,40}?(?:${DOT_SPELT}[\p{L}\p{N}_]{1,30}){0,2}`;
const HOST = String.raw`[\p{L}\p{N}](?:[\p{L}\p{N}]|-(?!dot-)){0,62}`;
/** Endings after which "name at shed.org" is an address and no voltage at a pin. */
const ENDING = '(?:com|org|net|info|biz|edu|example|test|invalid|eu|(?:co|org|ac|me)\\.uk|com\\.au|co\\.nz|de|fr|nl|be|at|ch|it|es|se|dk|no|fi|pl|cz|pt|ie|uk|ca|jp)';
/** "dave (at) bench (dot) example": written so that machines miss it. */
const SPELT_MAIL = new RegExp(`${NAME}${AT}${HOST}(?:${DOT_SPELT}${HOST}){0,2}${DOT_SPELT}[a-z]{2,12}(?:${DOT}[a-z]{2,6})?(?![\\p{L}\\p{N}_])`, 'giu');
/** The same with the dots of the host as they are. */
const HALF_SPELT_MAIL = new RegExp(`${NAME}(?:${BRACKETED_AT}|[-_]at[-_])${HOST}(?:${DOT}${HOST}){1,3}(?![\\p{L}\\p{N}_])`, 'giu');
const MAIL_IN_WORDS = new RegExp(`${NAME}(?: (?:${AT_WORD}) | @ ?|@ )(?:${HOST}\\.){1,3}${ENDING}(?![\\p{L}\\p{N}_])`, 'giu');
const SPELT_LINK = /(?<![\w.-])(?:www ?(?:dot|\(dot\)|\[dot\]|\.) ?|h(?:xx|\*\*|tt|--|__)ps?(?: ?:|\[:\]) ?\/ ?\/ ?)[^\s,;)]{2,200}(?: (?:dot|slash|\/) [^\s,;)]{1,60}){0,6}/giu;
const WORDED_LINK = /(?<![\w.-])[a-z0-9-]{2,40}(?: dot [a-z0-9-]{2,30}){1,3}(?: slash [^\s,;)]{1,60}){1,4}|(?<![\w.-])[a-z0-9-]{2,40}(?: dot (?:com|org|net|info|example|co|de|fr|nl|uk|eu|it|es)){1,2}(?!\p{L})/giu;
const SCHEME_LINK = /(?<!\w)(?:[a-z]{2,10}):\/\/[^\s<>"]{3,300}/giu;
/** "shed[.]example": written so that nobody opens it by mistake. */
const BROKEN_LINK = /(?<![\w.-])[a-z0-9-]{1,40}(?: ?[[({](?:\.|dot)[\])}] ?[a-z0-9-]{2,30}){1,3}(?:\/\S{0,100})?/giu;

/** A bare domain that may be a full stop without its blank, or a file's name. */
function isDoubtful(text: string): boolean {
  if (/^(?:\w+:\/\/|www\.)|[/@]/iu.test(text)) return false;
  const ending = text.slice(text.lastIndexOf('.') + 1).toLowerCase();
  return WORD_ENDINGS.has(ending) || /^[A-Z]/u.test(text.slice(text.lastIndexOf('.') + 1));
}

function links(text: string): FoundSpan[] {
  return (linkify.match(text) ?? [])
    .filter((match) => !isDoubtful(match.raw))
    .map((match) => ({
      kind: match.schema === 'mailto:' ? 'mail-address' : 'link',
      start: match.index,
      end: match.lastIndex,
      certainty: 'direct',
    }));
}

/** Mail addresses and links, plain or spelt out. */
export const mailAndLinks: FindSpans = (text) => [
  ...links(text),
  ...allMatches(text, MAIL, 'mail-address'),
  ...allMatches(text, SPELT_MAIL, 'mail-address').filter(({ start, end }) => !/ \. /u.test(text.slice(start, end)) || /[@([{<*]/u.test(text.slice(start, end))),
  ...allMatches(text, HALF_SPELT_MAIL, 'mail-address'),
  ...allMatches(text, MAIL_IN_WORDS, 'mail-address'),
  ...[SPELT_LINK, WORDED_LINK, SCHEME_LINK, BROKEN_LINK].flatMap((pattern) => allMatches(text, pattern, 'link')),
];
