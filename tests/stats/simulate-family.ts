import { CHECK, type CodedFinding, type CodedRecord, FIX, type Layout, SYMPTOM } from '../../shared/stats/layout';
import { createRandom, type Random } from '../../shared/stats/random';

export type FamilyOptions = {
  seed: number;
  causes: number;
  symptoms: number;
  checks: number;
  fixes: number;
  boards: number;
  /** Records that a cause's shares are spread like, around the marginal. */
  concentration: number;
};

/** A world of the model's own family, with its true probabilities. */
export type Family = {
  layout: Layout;
  prior: (device: number) => Float64Array;
  share: (observable: number, cause: number) => Float64Array;
  draw: (random: Random) => CodedRecord;
  posterior: (device: number, findings: readonly CodedFinding[]) => Float64Array;
};

/** Gamma(shape) by Marsaglia & Tsang 2000, with the usual boost below 1. */
export function drawGamma(shape: number, random: Random): number {
  if (shape < 1) return drawGamma(shape + 1, random) * Math.max(random(), 1e-12) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = Math.sqrt(-2 * Math.log(Math.max(random(), 1e-12))) * Math.cos(2 * Math.PI * random());
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(Math.max(random(), 1e-12)) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

export function drawDirichlet(mean: Float64Array, strength: number, random: Random): Float64Array {
  const parts = mean.map((m) => Math.max(1e-12, drawGamma(m * strength, random)));
  const total = parts.reduce((a, b) => a + b, 0);
  return parts.map((p) => p / total);
}

function drawIndex(shares: Float64Array, random: Random): number {
  let left = random();
  for (let i = 0; i < shares.length; i += 1) {
    left -= shares[i] as number;
    if (left < 0) return i;
  }
  return shares.length - 1;
}

/** Draws a world: root, one category, one maker, one model, and its boards. */
export function simulateFamily(options: FamilyOptions): Family {
  const random = createRandom(options.seed);
  const { causes: C, boards } = options;
  const kinds = Uint8Array.from([
    ...new Array<number>(options.symptoms).fill(SYMPTOM),
    ...new Array<number>(options.checks).fill(CHECK),
    ...new Array<number>(options.fixes).fill(FIX),
  ]);
  const valueCounts = Uint16Array.from(kinds, (kind) => (kind === SYMPTOM ? 2 : kind === CHECK ? 3 : 5));
  const valueStarts = new Uint32Array(kinds.length + 1);
  valueCounts.forEach((n, o) => {
    valueStarts[o + 1] = (valueStarts[o] as number) + n;
  });
  const devices = 4 + boards;
  const layout: Layout = {
    causeCount: C,
    kinds,
    valueCounts,
    valueStarts,
    onTarget: new Uint8Array(kinds.length * C),
    deviceParents: Int32Array.from({ length: devices }, (_, d) => (d < 4 ? d - 1 : 3)),
    deviceDepths: Uint8Array.from({ length: devices }, (_, d) => Math.min(d, 4)),
    partClasses: new Int32Array(devices * C).fill(-1),
    partClassCount: 0,
  };
  const even = (n: number) => new Float64Array(n).fill(1 / n);
  const base = drawDirichlet(even(C), C * 0.7, random);
  const priors = Array.from({ length: devices }, (_, d) => (d < 4 ? base : drawDirichlet(base, 40, random)));
  const shares = Array.from(kinds, (_, o) => {
    const marginal = drawDirichlet(even(valueCounts[o] as number), 4, random);
    return Array.from({ length: C }, () => drawDirichlet(marginal, options.concentration, random));
  });
  const share = (o: number, c: number) => shares[o]?.[c] as Float64Array;
  return {
    layout,
    prior: (device) => priors[device] as Float64Array,
    share,
    draw: (r) => {
      const device = 4 + Math.floor(r() * boards);
      const cause = drawIndex(priors[device] as Float64Array, r);
      const seen = Array.from(kinds, (kind, o) => ({ kind, o })).filter(({ kind }) => kind === SYMPTOM || r() < 0.05);
      const findings = seen.map(({ kind, o }, i) => ({
        observable: o,
        value: drawIndex(share(o, cause), r),
        implied: false,
        step: kind === SYMPTOM ? 0 : i + 1,
        stage: kind === SYMPTOM ? 0 : 2,
        proves: false,
      }));
      return { device, causes: [cause], proof: 0, findings };
    },
    posterior: (device, findings) => {
      const scores = (priors[device] as Float64Array).map((p, c) =>
        findings.reduce((sum, f) => sum + Math.log(share(f.observable, c)[f.value] as number), Math.log(p)),
      );
      const top = Math.max(...scores);
      const e = scores.map((s) => Math.exp(s - top));
      const total = e.reduce((a, b) => a + b, 0);
      return Float64Array.from([...e.map((x) => x / total), 0]);
    },
  };
}
