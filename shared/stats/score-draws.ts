import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { createRandom, shuffle } from './random';

/** How many draws stand for the uncertainty of one answer. */
export const DRAWS = 256;

/** A uniform grid of `DRAWS` points in (0, 1) in a fixed random order, one order per stream. */
const orders = new Map<number, Float64Array>();
let normals: Float64Array | undefined;

function uniforms(stream: number): Float64Array {
  const at = stream % 1024;
  let order = orders.get(at);
  if (order === undefined) {
    const points = Array.from({ length: DRAWS }, (_, i) => (i + 0.5) / DRAWS);
    order = Float64Array.from(shuffle(points, createRandom(at + 1)));
    orders.set(at, order);
  }
  return order;
}

/** Standard normal draws, stratified; the same for the same stream, unrelated between streams. */
export function normalDraws(stream: number): Float64Array {
  normals ??= Float64Array.from({ length: DRAWS }, (_, i) => normalQuantile((i + 0.5) / DRAWS, 0, 1));
  const grid = normals;
  return uniforms(stream).map((u) => grid[Math.floor(u * DRAWS)] as number);
}

/**
 * Logarithms of Gamma draws of mean 1 by the cube of a normal (E. B. Wilson & M. M. Hilferty, PNAS 17 (1931), 684-688) at
 * shape k + 1, brought down to k by a uniform to the power 1/k.
 */
export function logGammaDraws(k: number, stream: number): Float64Array {
  const u = uniforms(stream + 500);
  const up = k + 1;
  return normalDraws(stream).map((z, i) => {
    const cube = Math.max(1e-9, 1 - 1 / (9 * up) + z / (3 * Math.sqrt(up)));
    return Math.log(up) + 3 * Math.log(cube) + Math.log(u[i] as number) / k - Math.log(k);
  });
}
