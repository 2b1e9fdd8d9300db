import { allMatches } from './all-matches';
import type { FindSpans } from './personal-detail';

const IBAN = /(?<!\w)[A-Z]{2}\d{2}(?: ?[A-Z0-9]{4}){2,7}(?: ?[A-Z0-9]{1,3})?(?!\w)/gu;
const CARD = /(?<![\w.-])[3-6]\d{3}(?:([ -]?)\d{4}\1\d{4}\1\d{4}|[ -]?\d{6}[ -]?\d{5})(?![\w-]|\.\d)/gu;
const CUED =
  /\b(?:account|acct|a\/c|konto(?:nummer)?|compte|sort code|card)(?: ?(?:no|number|nr|num))?[.:#]{0,2} {0,2}(?<it>\d[\d -]{4,22}\d)(?!\w)/dgiu;

/** ISO 13616: the number, its first four signs moved to the end and letters read as 10 to 35, leaves 1 when divided by 97. */
export function isIban(text: string): boolean {
  const plain = text.replaceAll(' ', '');
  if (plain.length < 15 || plain.length > 34) return false;
  let rest = 0;
  for (const sign of plain.slice(4) + plain.slice(0, 4)) {
    const value = Number.parseInt(sign, 36);
    rest = (rest * (value > 9 ? 100 : 10) + value) % 97;
  }
  return rest === 1;
}

/** ISO/IEC 7812-1 annex B: the check digit of card numbers. */
export function isCardNumber(text: string): boolean {
  const digits = [...text.replaceAll(/[ -]/gu, '')].map(Number).reverse();
  const sum = digits.reduce((total, digit, i) => total + (i % 2 === 0 ? digit : digit * 2 - (digit > 4 ? 9 : 0)), 0);
  return digits.length >= 15 && sum % 10 === 0;
}

/** Bank account and payment card numbers. */
export const accountNumbers: FindSpans = (text) => [
  ...allMatches(text, IBAN, 'account-number').filter(({ start, end }) => isIban(text.slice(start, end))),
  ...allMatches(text, CARD, 'account-number').filter(({ start, end }) => isCardNumber(text.slice(start, end))),
  ...allMatches(text, CUED, 'account-number'),
];
