import { LinkifyIt } from 'linkify-it';
import { allMatches } from './all-matches';
import type { FindSpans, FoundSpan } from './personal-detail';

/** Common top-level names beyond those the library knows, and the reserved ones of RFC 2606. */
const MORE_TLDS = ['example', 'test', 'invalid', 'localhost', 'blog', 'shop', 'dev', 'app', 'site', 'online', 'tech', 'store', 'wiki', 'club'];
const linkify = new LinkifyIt({ fuzzyLink: true }).tlds(MORE_TLDS, true);

/** Country endings that are words, or the endings of files: a missed blank after a full stop is no link. */
const WORD_ENDINGS = new Set(
  'am an as at be by do go he hi id in is it la me my no of on or pa so to us we md py rs sh pl ps cc ml st ad ai pr sc sd ac dc'.split(' '),
);

/** Longest address of RFC 5321: what is longer is no mail address, and looking for it costs time. */
const MAIL = /(?<![\w.+-])[\p{L}\p{N}_][\p{L}\p{N}_.+-]{0,63}@[\p{L}\p{N}][\p{L}\p{N}-]{0,62}(?:\.[\p{L}\p{N}][\p{L}\p{N}-]{0,62}){1,6}/gu;
const AT = String.raw`(?: ?[([{<] ?(?:at|@|a t|ät) ?[)\]}>] ?| at | AT | @ )`;
const DOT = String.raw`(?: ?[([{<] ?(?:dot|\.|punkt|point) ?[)\]}>] ?| dot | DOT |\.)`;
/** "dave (at) bench (dot) example": written so that machines miss it. */
const SPELT_MAIL = new RegExp(
  `(?<![\\w.+-])\\w[\\w.+-]{1,63}${AT}\\w[\\w-]{1,62}(?: ?[([{<] ?(?:dot|\\.|punkt|point) ?[)\\]}>] ?| dot | DOT )[a-z]{2,12}(?:${DOT}[a-z]{2,6})?(?!\\w)`,
  'giu',
);
const SPELT_LINK = /(?<![\w.-])(?:www ?(?:dot|\(dot\)|\[dot\])|hxxps?:\/\/) ?\S{2,200}/giu;

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
  ...allMatches(text, SPELT_MAIL, 'mail-address'),
  ...allMatches(text, SPELT_LINK, 'link'),
];
