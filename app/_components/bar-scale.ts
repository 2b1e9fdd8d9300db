/** Full widths that a group of bars can have; the smallest that holds all of them is taken. */
const FULL_WIDTHS = [0.1, 0.25, 0.5, 1] as const;

/** The share that the full width of a group of bars stands for, so that small shares can be told apart. 0 to 1. */
export function barScale(shares: readonly number[]): number {
  const largest = Math.max(0, ...shares);
  return FULL_WIDTHS.find((full) => full >= largest) ?? 1;
}

/** A share as a length on such a scale, for an SVG attribute; what lies outside is cut. */
export function lengthOf(share: number, full: number): string {
  return `${(Math.min(1, Math.max(0, share / full)) * 100).toFixed(2)}%`;
}
