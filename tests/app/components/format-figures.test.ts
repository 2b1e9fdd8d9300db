import { describe, expect, it } from 'vitest';
import {
  formatCounted,
  formatDecibans,
  formatMinutes,
  formatMoney,
  formatMonth,
  formatPercent,
  formatPercentRange,
} from '../../../app/_components/format-figures';

/** A no-break space reads as a space here. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('formatPercent', () => {
  it.each([
    [0, '0%'],
    [0.0001, '<1%'],
    [0.005, '1%'],
    [0.384, '38%'],
    [0.994, '99%'],
    [0.9999, '>99%'],
    [1, '100%'],
  ])('writes %d as %s: what is not nought never reads as nought, nor what is not all as all', (share, words) => {
    expect(formatPercent(share)).toBe(words);
  });
});

describe('formatPercentRange', () => {
  it('joins both ends with a dash', () => expect(formatPercentRange(0.286, 0.479)).toBe('29–48%'));
});

describe('formatDecibans', () => {
  it.each([
    [4.26, '+4.3 dB'],
    [-14.24, '−14.2 dB'],
    [0.04, '0.0 dB'],
    [-0.04, '0.0 dB'],
  ])('signs %d as %s', (weight, words) => expect(plain(formatDecibans(weight))).toBe(words));
});

describe('formatMinutes', () => {
  it.each([
    [0, '0 min'],
    [0.1, '<1 min'],
    [2.6, '2.5 min'],
    [12.4, '12 min'],
    [59.6, '1 h'],
    [60, '1 h'],
    [61.2, '1 h 1 min'],
    [119.8, '2 h'],
  ])('writes %d minutes as %s', (minutes, words) => expect(plain(formatMinutes(minutes))).toBe(words));
});

describe('formatCounted', () => {
  it('counts one and many, thousands set apart', () => {
    expect(plain(formatCounted(1, 'case'))).toBe('1 case');
    expect(plain(formatCounted(1204, 'case'))).toBe('1,204 cases');
  });
});

describe('formatMoney', () => {
  it('writes hundredths as an amount', () => expect(formatMoney(1205)).toBe('12.05'));
});

describe('formatMonth', () => {
  it('writes a month in words, wherever the reader is', () => expect(formatMonth('2024-01')).toBe('January 2024'));
});
