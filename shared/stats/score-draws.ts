import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { createRandom, shuffle } from './random';

/** How many draws stand for the uncertainty of one answer. */
export const DRAWS = 256;

const STREAMS = 1024;
const orders = new Map<number, Uint16Array>();
const normalsOf = new Map<number, Float64Array>();
const gammas = new Map<number, Float64Array>();
let normals: Float64Array | undefined;

/** The whole numbers below `DRAWS` in a fixed random order: the same for the same stream, unrelated between streams. Kept: read, never change. */
export function drawOrder(stream: number): Uint16Array {
  const at = stream % STREAMS;
  let order = orders.get(at);
  if (order === undefined) {
    order = Uint16Array.from(shuffle(Array.from({ length: DRAWS }, (_, i) => i), createRandom(at + 1)));
    orders.set(at, order);
  }
  return order;
}

/** Standard normal draws, stratified: the middle quantile of each of `DRAWS` equal shares, in the order of the stream. Kept: read, never change. */
export function normalDraws(stream: number): Float64Array {
  const at = stream % STREAMS;
  let draws = normalsOf.get(at);
  if (draws === undefined) {
    normals ??= normalQuantiles(DRAWS);
    const grid = normals;
    draws = Float64Array.from(drawOrder(at), (i) => grid[i] as number);
    normalsOf.set(at, draws);
  }
  return draws;
}

function normalQuantiles(count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count, 0, 1));
}

/** Points per side of the square from which quantiles of a Gamma distribution are read off. */
const SIDE = 64;

/**
 * Logarithm of a Gamma variable of mean 1 and shape k: the middle quantile of each of `DRAWS` equal shares, ascending. By the cube of
 * a normal (E. B. Wilson & M. M. Hilferty, PNAS 17 (1931), 684-688) at shape k + 1, brought down to k by a uniform to the
 * power 1/k, over a grid of both. Kept by k, of which few are asked for: read, never change.
 */
export function logGammaQuantiles(k: number): Float64Array {
  let quantiles = gammas.get(k);
  if (quantiles === undefined) {
    const up = k + 1;
    const cubes = normalQuantiles(SIDE).map((z) => 3 * Math.log(Math.max(1e-9, 1 - 1 / (9 * up) + z / (3 * Math.sqrt(up)))));
    const points = new Float64Array(SIDE * SIDE);
    for (let i = 0; i < SIDE; i += 1) {
      const down = Math.log((i + 0.5) / SIDE) / k + Math.log(up / k);
      for (let j = 0; j < SIDE; j += 1) points[i * SIDE + j] = (cubes[j] as number) + down;
    }
    points.sort();
    const each = points.length / DRAWS;
    quantiles = Float64Array.from({ length: DRAWS }, (_, i) => ((points[i * each + each / 2 - 1] as number) + (points[i * each + each / 2] as number)) / 2);
    gammas.set(k, quantiles);
  }
  return quantiles;
}
