import type { SearchFilters, SearchSort } from '../../../../shared/schemas/search';

/** What a search has to give, whatever engine answers; cases by their letters. */
export type Expectation = {
  /** Why it has to be so. */
  because: string;
  text?: string;
  filters?: SearchFilters;
  sort?: SearchSort;
  /** Stands first. */
  first?: string;
  /** Are found. */
  has?: string;
  /** Are not found. */
  lacks?: string;
  /** Are found, in any order, and no others. */
  exactly?: string;
  /** Stand in this order. */
  order?: string;
};

const words: Expectation[] = [
  { because: 'one word of a narrative', text: 'electrolytics', exactly: 'm' },
  { because: 'a word of a label', text: 'azimuth', exactly: 'h' },
  { because: 'two words, both in one case alone', text: 'pulsing reset', first: 'c' },
  { because: 'words in another order', text: 'reset pulsing', first: 'c' },
  { because: 'what somebody remembers of a thread', text: 'that thread about the pulsing reset', first: 'c' },
  { because: 'the symptom in its own words', text: 'grey screen', first: 'a' },
  { because: 'two symptoms of one case', text: 'black screen no sound', first: 'b' },
  { because: 'a designator', text: 'U31', exactly: 'f' },
  { because: 'a designator in small letters', text: 'x1', first: 'b' },
  { because: 'the cause', text: 'stuck bit', first: 'a' },
  { because: 'the fix', text: 'replace work ram', first: 'p' },
  { because: 'the maker', text: 'Tessaly', exactly: 'ek' },
  { because: 'the model', text: 'Tessaly Pocket', first: 'e' },
  { because: 'what the model is called on a bench', text: 'qb8', has: 'abln', lacks: 'cdefghijkmo' },
  { because: 'model and symptom together', text: 'duo resets', first: 'c' },
  { because: 'symptom and part', text: 'line vertical amplifier', first: 'g' },
  { because: 'a word in capitals', text: 'MEMBRANE', exactly: 'n' },
  { because: 'a word that stands in several cases finds them all', text: 'alcohol', exactly: 'dj' },
  { because: 'a common word still ranks: where the label has it, it counts more', text: 'screen', has: 'abd' },
  { because: 'words that say nothing are passed over', text: 'the lens of the', first: 'j' },
  { because: 'a number with a point', text: '9.1', first: 'l' },
  { because: 'accents do not matter', text: 'naive cafe', first: 'm' },
  { because: 'nor do they in the search', text: 'naïve café', first: 'm' },
  { because: 'a word in no case, beside one in a single case', text: 'zorblefrotz membrane', first: 'n' },
  { because: 'a word in no case, nor near any, finds nothing', text: 'zorblefrotzmicronium', exactly: '' },
];

const forms: Expectation[] = [
  { because: 'the plural of what was written', text: 'pulleys belts', first: 'i' },
  { because: 'the base form of what was written', text: 'iron flat cable', first: 'e' },
  { because: 'the past of what was written', text: 'seats slot', first: 'd' },
  { because: 'American spelling', text: 'gray screen', first: 'a' },
  { because: 'American spelling, one word', text: 'color trimmer', first: 'o' },
  { because: 'a short form', text: 'xtal', has: 'b', lacks: 'acdefghijklmno' },
  { because: 'a synonym of the vocabulary', text: 'mute', has: 'bk' },
  { because: 'a twin word', text: 'television trimmer', first: 'o' },
  // An engine may forgive a slip in a beginning, too ("memory"), but what is right stands first.
  { because: 'the beginning of a word, as it is being typed', text: 'membr', first: 'n' },
  { because: 'the beginning of a second word', text: 'pulsing res', first: 'c' },
  { because: 'two letters are a beginning', text: 'azimuth to', first: 'h' },
  { because: 'a beginning of an inflected word', text: 'scrap', first: 'i' },
];

const slips: Expectation[] = [
  { because: 'a letter missing', text: 'membrne', exactly: 'n' },
  { because: 'a letter too many', text: 'azzimuth', exactly: 'h' },
  { because: 'a wrong letter', text: 'alcahol', exactly: 'dj' },
  { because: 'two letters exchanged', text: 'oscillatro', first: 'b' },
  { because: 'a slip beside a right word', text: 'grey scren', first: 'a' },
  { because: 'two slips in a long word', text: 'electrolitycs', first: 'm' },
  { because: 'two words written as one', text: 'greyscreen', first: 'a' },
  { because: 'a slip in the second word of two', text: 'vertical amplifeir', first: 'g' },
];

const phrases: Expectation[] = [
  { because: 'words side by side', text: '"reset line was pulsing"', exactly: 'c' },
  { because: 'words that are there, but not side by side', text: '"pulsing line"', exactly: '' },
  { because: 'a phrase and a word', text: '"grey screen" switched', first: 'a' },
  { because: 'a phrase without its closing quote', text: '"turned to tar', exactly: 'i' },
  { because: 'typographic quotes', text: '“turned to tar”', exactly: 'i' },
  { because: 'a word left out', text: 'alcohol -lens', exactly: 'd' },
  { because: 'a phrase left out', text: 'alcohol -"every disc"', exactly: 'd' },
  { because: 'leaving out what is not there', text: 'membrane -zorblefrotz', exactly: 'n' },
  { because: 'a hyphen within a word leaves nothing out', text: 'known-good chip', first: 'a' },
];

const filters: Expectation[] = [
  { because: 'one category', filters: { category: ['handheld'] }, exactly: 'e' },
  { because: 'either of two categories', filters: { category: ['handheld', 'monitor'] }, exactly: 'eg' },
  { because: 'a model has the cases of its boards', filters: { device: ['ormadic-duo'] }, exactly: 'cdmo' },
  { because: 'a board has its own', filters: { device: ['ormadic-duo-rev-1'] }, exactly: 'co' },
  { because: 'a symptom', filters: { symptom: ['no-sound'] }, exactly: 'bk' },
  { because: 'a cause', filters: { cause: ['crystal-dead'] }, exactly: 'b' },
  { because: 'an outcome', filters: { outcome: ['unresolved'] }, exactly: 'l' },
  { because: 'how the cause was proved', filters: { proof: ['suspected'] }, exactly: 'k' },
  { because: 'a cause that was not found was not proved', filters: { proof: ['none'] }, exactly: 'l' },
  { because: 'a year', filters: { year: ['2022'] }, exactly: 'fg' },
  { because: 'with photos', filters: { photos: ['yes'] }, exactly: 'aem' },
  { because: 'two filters narrow each other', filters: { category: ['home-computer'], year: ['2025'] }, exactly: 'kp' },
  { because: 'a filter narrows words', text: 'alcohol', filters: { year: ['2025'], category: ['console'] }, exactly: 'dj' },
  { because: 'a filter that leaves nothing', text: 'membrane', filters: { category: ['drive'] }, exactly: '' },
  { because: 'a value that no case has', filters: { symptom: ['arcing'] }, exactly: '' },
];

const orders: Expectation[] = [
  { because: 'the newest first', text: 'alcohol', sort: 'newest', order: 'jd' },
  { because: 'the oldest first', text: 'alcohol', sort: 'oldest', order: 'dj' },
  { because: 'nothing typed lists all, the newest first', order: 'kjpedl' },
  { because: 'the oldest of all first', sort: 'oldest', order: 'of' },
  { because: 'within a filter too', filters: { device: ['ormadic-duo'] }, sort: 'newest', order: 'dmco' },
];

const harmless: Expectation[] = [
  { because: 'AND is a word of no weight', text: 'membrane AND cracked', first: 'n' },
  { because: 'brackets are nothing', text: '(membrane) [cracked]', first: 'n' },
  { because: 'a star is nothing', text: 'membrane*', first: 'n' },
  { because: 'a name before a colon is a word', text: 'narrative:membrane', has: 'n' },
  { because: 'marks alone ask for nothing, so all is listed', text: '*"\'();--', first: 'k' },
  { because: 'blanks ask for nothing', text: ' \t\n ', first: 'k' },
];

/** Eighty searches of the contract cases. */
export const contractQueries: Expectation[] = [...words, ...forms, ...slips, ...phrases, ...filters, ...orders, ...harmless];

/** What somebody might send to break a search; none may fail, and each must still be answered in order. */
export const hostileTexts: Record<string, string> = {
  'an unclosed quote': '"grey',
  'nothing but quotes': '""""""',
  'operators in a row': 'AND OR NOT NEAR(a b) a* ^b -c +d {e}: f',
  'an attempt to close the expression': '") OR 1=1; DROP TABLE case_text; --',
  'control characters': 'grey\u0000\u0001\u0008\u001b[31m screen\u007f',
  'private-use marks': 'grey \ue000\ue001 screen',
  'lone surrogates': 'grey \ud800 \udfff screen',
  'ten thousand characters without a blank': 'x'.repeat(10_000),
  'ten thousand characters of words': 'grey screen clock '.repeat(560),
  'ten thousand quotes': '"'.repeat(10_000),
  'ten thousand hyphens and letters': '-a '.repeat(3_400),
  'right-to-left text and its marks': 'שלום עולם \u202e grey \u202c مرحبا',
  'combining marks without end': `g${'\u0301'.repeat(3_000)}rey`,
  emoji: '🔧🔥 grey',
  'a filter in the text': 'category = "console" OR id EXISTS',
};
