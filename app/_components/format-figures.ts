/** The only rounding in the project: figures reach the page unrounded. A no-break space keeps number and unit together. */
const NBSP = '\u00a0';
const MINUS = '\u2212';
const grouped = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 0 });

/** A share of 0 to 1 as whole percent; what is not nought never reads as nought, nor what is not all as all. */
export function formatPercent(share: number): string {
  if (share > 0 && share < 0.005) return '<1%';
  if (share < 1 && share > 0.995) return '>99%';
  return `${Math.round(share * 100)}%`;
}

/** A share of 0 to 1 to a tenth of a percent, for what moves by little; what is not nought never reads as nought. */
export function formatPercentFine(share: number): string {
  if (share > 0 && share < 0.0005) return '<0.1%';
  return `${(share * 100).toFixed(1)}%`;
}

/** An interval of shares: `29–48%`. */
export function formatPercentRange(low: number, high: number): string {
  return `${Math.round(low * 100)}–${Math.round(high * 100)}%`;
}

/** A count with thousands set apart. */
export function formatCount(count: number): string {
  return grouped.format(count);
}

/** `1 case`, `23 cases`. */
export function formatCounted(count: number, one: string, many = `${one}s`): string {
  return `${formatCount(count)}${NBSP}${count === 1 ? one : many}`;
}

/** A weight of evidence in decibans, signed, one decimal; a weight that rounds to nought carries no sign. */
export function formatDecibans(weight: number): string {
  const size = Math.abs(weight).toFixed(1);
  const sign = size === '0.0' ? '' : weight < 0 ? MINUS : '+';
  return `${sign}${size}${NBSP}dB`;
}

/** Bits of information, two decimals. */
export function formatBits(bits: number): string {
  return `${bits.toFixed(2)}${NBSP}bit`;
}

/** Minutes as `12 min`, or `1 h 20 min` from an hour on; below ten with a half where there is one. */
export function formatMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole >= 60) {
    const rest = whole % 60;
    return rest === 0 ? `${Math.floor(whole / 60)}${NBSP}h` : `${Math.floor(whole / 60)}${NBSP}h${NBSP}${rest}${NBSP}min`;
  }
  const shown = minutes < 10 ? Math.round(minutes * 2) / 2 : whole;
  if (minutes > 0 && shown === 0) return `<1${NBSP}min`;
  return `${shown}${NBSP}min`;
}

/** Money without a currency: the casebook knows none. */
export function formatMoney(cents: number): string {
  return (cents / 100).toFixed(2);
}

/** How alike two cases are: any number from nought up, one decimal. */
export function formatScore(score: number): string {
  return score.toFixed(1);
}

/** `2024-03` as `March 2024`. */
export function formatMonth(month: string): string {
  const [year, number] = month.split('-').map(Number);
  if (year === undefined || number === undefined) return month;
  return new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' }).format(
    Date.UTC(year, number - 1, 1),
  );
}

/** A measured number to three figures at most, without an exponent: `4.97`, `3580000`. */
export function formatReading(value: number): string {
  const rounded = Number(value.toPrecision(3));
  return `${rounded < 0 ? MINUS : ''}${Math.abs(rounded).toLocaleString('en-GB', { useGrouping: false, maximumFractionDigits: 9 })}`;
}
