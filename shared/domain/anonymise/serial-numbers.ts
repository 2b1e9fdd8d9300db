import { allMatches } from './all-matches';
import type { FindSpans } from './personal-detail';

const NUMBER_WORD = String.raw`(?:no|num|number|nr|nummer|#|№)`;
const CUE = [
  String.raw`serial ?${NUMBER_WORD}`,
  String.raw`ser(?:\.|(?:\. ?| )${NUMBER_WORD}|#)`,
  String.raw`s\/n[oº]?`,
  'sn',
  'seriennummer',
  String.raw`serien-?nr`,
  String.raw`(?:numéro|no|n°|nº) de série`,
  String.raw`número de serie`,
  String.raw`(?:asset|inventory|service) (?:tag|${NUMBER_WORD})`,
  String.raw`(?:order|invoice|tracking|customer|ticket|auction|item|receipt|repair job|booking)(?: (?:id|ref))? ?${NUMBER_WORD}`,
  'imei',
].join('|');
const VALUE = String.raw`[A-Z0-9](?:[A-Z0-9]|[-./](?=[A-Z0-9])| (?=\d{3,})){3,24}`;
const CUED = new RegExp(`(?<![\\w/])(?:${CUE})(?![a-z])[.:]?[ :#=.]{0,4}(?:(?:is|was|reads|ending(?: in)?|starts|lautet|of this one is) )?[#"'(]?(?<it>${VALUE})(?![\\w])`, 'dgiu');
/** "serial" alone also names ports and data: what follows has to be long. */
const BARE = /\bserial:? (?:is |was |reads |of )?[#:]?(?<it>(?=(?:[A-Z-]*\d){5})[A-Z0-9][A-Z0-9-]{5,20})(?!\w| ?(?:baud|bps|bit|Hz|kHz|byte))/dgiu;
/** Standard parts after "SN": the letters are the beginning of a part number. */
const PART = /^(?:54\/)?(?:54|74)[A-Z]*\d{2,5}[A-Z]*$/iu;

/** Serial, asset, order and ticket numbers: signs with at least three digits after words that say what they are. */
export const serialNumbers: FindSpans = (text) =>
  [...allMatches(text, CUED, 'serial-number'), ...allMatches(text, BARE, 'serial-number')].filter(({ start, end }) => {
    const value = text.slice(start, end);
    return (value.match(/\d/gu)?.length ?? 0) >= 3 && !PART.test(value);
  });
