import type { Unit } from '../../schemas/terms';

/**
 * A number as written on a bench. `resolution` is the value of its last digit (0.01 for "3.58"). `unit` is null where none was written; `overload` is a meter
 * showing OL.
 */
export type WrittenReading = {
  value: number | null;
  resolution: number;
  unit: Unit | null;
  overload: boolean;
  start: number;
  end: number;
};

/** Ways a unit is written, lower case. Letters whose case matters (m and M) are settled in `unitFromText`. */
const UNIT_NAMES: Record<string, Unit> = {
  v: 'V',
  volt: 'V',
  volts: 'V',
  vdc: 'V',
  vac: 'V',
  vcc: 'V',
  mv: 'mV',
  millivolt: 'mV',
  millivolts: 'mV',
  ohm: 'Ohm',
  ohms: 'Ohm',
  ω: 'Ohm',
  r: 'Ohm',
  k: 'kOhm',
  kohm: 'kOhm',
  kohms: 'kOhm',
  kω: 'kOhm',
  mohm: 'MOhm',
  mohms: 'MOhm',
  meg: 'MOhm',
  megohm: 'MOhm',
  megohms: 'MOhm',
  mω: 'MOhm',
  hz: 'Hz',
  hertz: 'Hz',
  khz: 'kHz',
  kilohertz: 'kHz',
  mhz: 'MHz',
  megahertz: 'MHz',
  ma: 'mA',
  milliamp: 'mA',
  milliamps: 'mA',
  a: 'A',
  amp: 'A',
  amps: 'A',
  uf: 'uF',
  µf: 'uF',
  μf: 'uF',
  mfd: 'uF',
  nf: 'nF',
  '°c': 'Cel',
  c: 'Cel',
  celsius: 'Cel',
  degc: 'Cel',
  ms: 'ms',
  millisecond: 'ms',
  milliseconds: 'ms',
  msec: 'ms',
  s: 's',
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
};
const UNIT_PATTERN = Object.keys(UNIT_NAMES)
  .sort((a, b) => b.length - a.length)
  .join('|');

const SIGN = '[+\\-−±]?';
const NUMBER = '(?:\\d{1,9}(?:[.,]\\d{1,9})?|\\.\\d{1,9})';
const WORD_END = '(?![\\p{L}\\p{N}_])';
const READING = new RegExp(`(${SIGN}${NUMBER})(?:[ \\u00a0]?(${UNIT_PATTERN})${WORD_END})`, 'uiy');
/** The unit standing in for the decimal point, as on schematics: 4k7, 4V6, 0R22. */
const INFIX = new RegExp(`(\\d{1,6})([kvrm])(\\d{1,4})${WORD_END}`, 'uiy');
const BARE = new RegExp(`(${SIGN}${NUMBER})${WORD_END}`, 'uiy');
const OVERLOAD = new RegExp(
  `(?:o\\.?l\\.?|over[ -]?load(?:ed)?|over[ -]?(?:limit|range)|out of range|open line|infinite|infinity|infinite ohms|∞)${WORD_END}`,
  'uiy',
);

/**
 * Reads the number that begins exactly at `at`: `4.6 V`, `-12v`, `680 mV`, `4k7`, `0`, `OL`.
 * A comma is a decimal point only where a unit follows and no blank follows the comma ("4,6 V").
 * Returns null where nothing there is a reading. `end` is exclusive.
 */
export function parseReadingAt(text: string, at: number): WrittenReading | null {
  const infix = match(INFIX, text, at);
  if (infix) {
    const value = Number(`${infix[1]}.${infix[3]}`);
    const unit = infixUnit(infix[2] ?? '');
    return { value, resolution: 10 ** -(infix[3] ?? '').length, unit, overload: false, start: at, end: at + infix[0].length };
  }
  const withUnit = match(READING, text, at);
  if (withUnit) {
    const unit = unitFromText(withUnit[2] ?? '');
    return {
      value: toNumber(withUnit[1] ?? ''),
      resolution: resolutionOf(withUnit[1] ?? ''),
      unit,
      overload: false,
      start: at,
      end: at + withUnit[0].length,
    };
  }
  const overload = match(OVERLOAD, text, at);
  if (overload) return { value: null, resolution: 1, unit: null, overload: true, start: at, end: at + overload[0].length };
  const bare = match(BARE, text, at);
  if (!bare) return null;
  const digits = (bare[1] ?? '').split(',')[0] ?? '';
  return {
    value: toNumber(digits),
    resolution: resolutionOf(digits),
    unit: null,
    overload: false,
    start: at,
    end: at + digits.length,
  };
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function toNumber(written: string): number {
  return Number(written.replace('−', '-').replace(/^[±+]/, '').replace(',', '.'));
}

function resolutionOf(written: string): number {
  return 10 ** -(/[.,](\d+)$/.exec(written)?.[1]?.length ?? 0);
}

/** `mV`/`mA`/`ms` are milli however they are cased; ohms with a capital or small m are always mega at the bench. */
function unitFromText(written: string): Unit | null {
  return UNIT_NAMES[written.toLowerCase()] ?? null;
}

function infixUnit(letter: string): Unit {
  if (letter === 'k' || letter === 'K') return 'kOhm';
  if (letter === 'v' || letter === 'V') return 'V';
  return letter === 'm' || letter === 'M' ? 'MOhm' : 'Ohm';
}
