import type { Random } from '../world';

/** The demo world's last month; the eight years before it are covered, the later ones a little better. */
const LAST_YEAR = 2026;
const LAST_MONTH = 10;
const SPAN_MONTHS = 96;

/** A month as YYYY-MM. */
export function drawMonth(random: Random): string {
  const back = Math.floor((SPAN_MONTHS * (1 - Math.sqrt(0.15 + 0.85 * random()))) / (1 - Math.sqrt(0.15)));
  const index = LAST_YEAR * 12 + (LAST_MONTH - 1) - Math.min(back, SPAN_MONTHS - 1);
  return `${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}`;
}
