/** Coarse bins of the share of a device's accepted cases that one contributor posted: from this share on. */
export const CONCENTRATION_BINS = [0, 0.25, 0.5, 0.75] as const;

/** Where one contributor has this share or more of a device's evidence, its figures are largely one person's. */
export const CONCENTRATION_WARNING = 0.5;

/** With fewer cases than this a share says nothing. */
export const CONCENTRATION_LEAST_CASES = 8;

/** Bin of a share, 0 for the lowest; null where the device has too few cases. */
export function concentrationBin(own: number, cases: number): number | null {
  if (cases < CONCENTRATION_LEAST_CASES) return null;
  return CONCENTRATION_BINS.filter((from) => own / cases >= from).length - 1;
}
