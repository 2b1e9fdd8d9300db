import { describe, expect, it } from 'vitest';
import { type CaseDetails, fewestValues, rarityOf, smallestGroup } from '../../../shared/domain/anonymise/rarity';

const table = (names: string, ...rows: string[]): CaseDetails[] =>
  rows.map((row) => Object.fromEntries(names.split(' ').map((name, i) => [name, row.split(', ')[i] ?? ''])));

/** L. Sweeney, Int. J. Uncertainty, Fuzziness and Knowledge-Based Systems 10(5), 2002, 557-570: the example table, from memory. */
const SWEENEY = table(
  'race birth gender zip problem',
  'Black, 1965, m, 0214*, short breath',
  'Black, 1965, m, 0214*, chest pain',
  'Black, 1965, f, 0213*, hypertension',
  'Black, 1965, f, 0213*, hypertension',
  'Black, 1964, f, 0213*, obesity',
  'Black, 1964, f, 0213*, chest pain',
  'White, 1964, m, 0213*, chest pain',
  'White, 1964, m, 0213*, obesity',
  'White, 1964, m, 0213*, short breath',
  'White, 1967, m, 0213*, chest pain',
  'White, 1967, m, 0213*, chest pain',
);
const KNOWN = ['race', 'birth', 'gender', 'zip'];

/** A. Machanavajjhala et al., ACM TKDD 1(1), 2007: twelve patients, 4-anonymous and 3-diverse, groups by number, from memory. */
const FOUR_ANONYMOUS = table('group disease', ...['1, heart', '1, heart', '1, viral', '1, viral'], ...['2, cancer', '2, heart', '2, viral', '2, viral'], ...Array(4).fill('3, cancer'));
const THREE_DIVERSE = table('group disease', ...['1, heart', '1, viral', '1, cancer', '1, cancer'], ...['2, cancer', '2, heart', '2, viral', '2, viral'], ...['3, heart', '3, viral', '3, cancer', '3, cancer']);

const counted = (records: readonly CaseDetails[]) => records.map((details) => ({ details, count: 1 }));
const only = (record: CaseDetails, names: readonly string[]) => Object.fromEntries(names.map((name) => [name, record[name] ?? '']));

describe('smallestGroup', () => {
  it('is 2 for the table of Sweeney 2002 and 4 for both of Machanavajjhala et al. 2007', () => {
    expect(smallestGroup(SWEENEY, KNOWN)).toBe(2);
    expect(smallestGroup(FOUR_ANONYMOUS, ['group'])).toBe(4);
    expect(smallestGroup(THREE_DIVERSE, ['group'])).toBe(4);
  });

  it('is 0 where there are no records', () => expect(smallestGroup([], KNOWN)).toBe(0));
});

describe('fewestValues', () => {
  it('shows which of the published tables give a value away', () => {
    expect(fewestValues(SWEENEY, KNOWN, 'problem')).toBe(1);
    expect(fewestValues(FOUR_ANONYMOUS, ['group'], 'disease')).toBe(1);
    expect(fewestValues(THREE_DIVERSE, ['group'], 'disease')).toBe(3);
  });
});

describe('rarityOf', () => {
  it('finds the group sizes 2, 2, 2, 3, 2 of Sweeney 2002', () => {
    const sizes = SWEENEY.map((record, i) => rarityOf(only(record, KNOWN), counted(SWEENEY.filter((_, other) => other !== i)), 2));
    expect(sizes.map(({ alike }) => alike)).toEqual([2, 2, 2, 2, 2, 2, 3, 3, 3, 2, 2]);
    expect(sizes.some(({ rare }) => rare)).toBe(false);
  });

  it('calls a group of 2 rare where 3 are asked for, and names what to leave out', () => {
    const rarity = rarityOf(only(SWEENEY[9]!, KNOWN), counted(SWEENEY.slice(0, 9).concat(SWEENEY.slice(10))), 3);
    expect(rarity).toEqual({ alike: 2, rare: true, hidesWithout: ['birth'] });
  });

  it('counts the case itself, and nothing else in an empty casebook', () => {
    expect(rarityOf({ device: 'quellbrook-8', month: '2025-03' }, [], 2)).toEqual({ alike: 1, rare: true, hidesWithout: [] });
  });

  it('adds up counts whose other details differ', () => {
    const counts = ['2025-03', '2025-04'].map((month) => ({ details: { device: 'ormadic-duo', month }, count: 2 }));
    expect(rarityOf({ device: 'ormadic-duo' }, counts, 5)).toMatchObject({ alike: 5, rare: false });
    expect(rarityOf({ device: 'ormadic-duo', month: '2025-03' }, counts, 5)).toEqual({ alike: 3, rare: true, hidesWithout: ['month'] });
  });
});
