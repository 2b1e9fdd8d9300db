/** How many species were seen exactly r times. */
export type FrequencyOfFrequency = { r: number; n: number };

/** `unseen`: probability of all unseen species together; `probability(r)`: of one species seen r times. */
export type GoodTuring = { unseen: number; slope: number; intercept: number; probability: (r: number) => number };

/**
 * Simple Good-Turing estimates. Source: W. A. Gale & G. Sampson, "Good-Turing frequency estimation without tears",
 * Journal of Quantitative Linguistics 2 (1995), 217-237, with their criterion of 1.65 standard deviations for leaving
 * the raw Turing estimates. `slope` and `intercept` are those of the fitted line, in natural logarithms.
 * @param frequencies ascending in r, each r once
 * @throws RangeError where fewer than two different r are given
 */
export function simpleGoodTuring(frequencies: readonly FrequencyOfFrequency[]): GoodTuring {
  if (frequencies.length < 2) throw new RangeError('Good-Turing needs at least two different frequencies.');
  const total = frequencies.reduce((sum, { r, n }) => sum + r * n, 0);
  const numberAt = new Map(frequencies.map(({ r, n }) => [r, n]));
  const { slope, intercept } = fitLine(averaged(frequencies));
  const line = (r: number) => Math.exp(intercept + slope * Math.log(r));
  const adjusted = new Map<number, number>();
  let turing = true;
  for (const { r, n } of frequencies) {
    const smooth = ((r + 1) * line(r + 1)) / line(r);
    const above = numberAt.get(r + 1);
    if (above === undefined) turing = false;
    if (turing && above !== undefined) {
      const raw = ((r + 1) * above) / n;
      const deviation = Math.sqrt((r + 1) ** 2 * (above / n ** 2) * (1 + above / n));
      if (Math.abs(raw - smooth) <= 1.65 * deviation) turing = false;
      else {
        adjusted.set(r, raw);
        continue;
      }
    }
    adjusted.set(r, smooth);
  }
  const unseen = (numberAt.get(1) ?? 0) / total;
  const mass = frequencies.reduce((sum, { r, n }) => sum + n * (adjusted.get(r) as number), 0);
  const probability = (r: number) => {
    const r0 = adjusted.get(r);
    if (r0 === undefined) throw new RangeError(`No species was seen ${r} times.`);
    return ((1 - unseen) * r0) / mass;
  };
  return { unseen, slope, intercept, probability };
}

/** Z_r: each n spread over the gap to its neighbours, 0.5 (t - q), so that sparse high r do not count too much. */
function averaged(frequencies: readonly FrequencyOfFrequency[]): { x: number; y: number }[] {
  return frequencies.map(({ r, n }, i) => {
    const below = frequencies[i - 1]?.r ?? 0;
    const above = frequencies[i + 1]?.r ?? 2 * r - below;
    return { x: Math.log(r), y: Math.log(n / (0.5 * (above - below))) };
  });
}

function fitLine(points: readonly { x: number; y: number }[]): { slope: number; intercept: number } {
  const mean = (of: (p: { x: number; y: number }) => number) => points.reduce((sum, p) => sum + of(p), 0) / points.length;
  const mx = mean((p) => p.x);
  const my = mean((p) => p.y);
  const slope = mean((p) => (p.x - mx) * (p.y - my)) / mean((p) => (p.x - mx) ** 2);
  return { slope, intercept: my - slope * mx };
}
