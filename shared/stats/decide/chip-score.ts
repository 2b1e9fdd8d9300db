/** How much pins of one chip are taken to say the same thing over again, 0 not at all to 1 entirely; an assumption. */
export const PIN_OVERLAP = 0.5;

export type ChipScore = {
  /** Evidence that the fault involves this chip, in decibans; above 0 for, below 0 against. */
  score: number;
  /** Indices of the pins, those that say most first; pins that say nothing are left out. */
  drivers: number[];
};

/**
 * One score for a chip from the weights of evidence of its pins, in decibans. Pins of a chip fall silent together, so their
 * sum would count one fact many times; it is divided by 1 + (n - 1) x overlap, the design effect of n equally correlated
 * readings (L. Kish, "Survey Sampling", 1965), with n the number of pins that carry the evidence, (sum |w|)^2 / sum w^2. One
 * pin counts in full; many alike count at most 1 / overlap times one of them. No pins score 0.
 */
export function chipScore(weights: ArrayLike<number>, overlap: number = PIN_OVERLAP): ChipScore {
  if (!(overlap >= 0 && overlap <= 1)) throw new RangeError(`Overlap must lie between 0 and 1, not ${overlap}.`);
  const pins = Array.from(weights);
  if (pins.some((weight) => !Number.isFinite(weight))) throw new RangeError('Weights of evidence must be finite numbers.');
  const sum = pins.reduce((total, weight) => total + weight, 0);
  const squares = pins.reduce((total, weight) => total + weight ** 2, 0);
  const size = pins.reduce((total, weight) => total + Math.abs(weight), 0);
  const carrying = squares > 0 ? size ** 2 / squares : 1;
  const drivers = [...pins.keys()]
    .filter((pin) => pins[pin] !== 0)
    .sort((a, b) => Math.abs(pins[b]!) - Math.abs(pins[a]!) || a - b);
  return { score: sum / (1 + (carrying - 1) * overlap), drivers };
}
