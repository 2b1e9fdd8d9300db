import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { createRandom, shuffle } from './random';

/** How many draws stand for the uncertainty of one answer. */
export const DRAWS = 256;

/** A uniform grid of `DRAWS` points in (0, 1) in a fixed random order, one order per stream. */
const orders = new Map<number, Float64Array>();
const normalsOf = new Map<number, Float64Array>();
const logsOf = new Map<number, Float64Array>();
const STREAMS = 1024;
let normals: Float64Array | undefined;

function uniforms(stream: number): Float64Array {
  const at = stream % STREAMS;
  let order = orders.get(at);
  if (order === undefined) {
    const points = Array.from({ length: DRAWS }, (_, i) => (i + 0.5) / DRAWS);
    order = Float64Array.from(shuffle(points, createRandom(at + 1)));
    orders.set(at, order);
  }
  return order;
}

/** Standard normal draws, stratified; the same for the same stream, unrelated between streams. Kept: read, never change. */
export function normalDraws(stream: number): Float64Array {
  const at = stream % STREAMS;
  let draws = normalsOf.get(at);
  if (draws === undefined) {
    normals ??= Float64Array.from({ length: DRAWS }, (_, i) => normalQuantile((i + 0.5) / DRAWS, 0, 1));
    const grid = normals;
    draws = uniforms(at).map((u) => grid[Math.floor(u * DRAWS)] as number);
    normalsOf.set(at, draws);
  }
  return draws;
}

/** Logarithms of the uniform points of a stream. */
function logUniforms(stream: number): Float64Array {
  const at = stream % STREAMS;
  let logs = logsOf.get(at);
  if (logs === undefined) {
    logs = uniforms(at).map(Math.log);
    logsOf.set(at, logs);
  }
  return logs;
}

/**
 * Logarithms of Gamma draws of mean 1 by the cube of a normal (E. B. Wilson & M. M. Hilferty, PNAS 17 (1931), 684-688) at
 * shape k + 1, brought down to k by a uniform to the power 1/k.
 */
export function logGammaDraws(k: number, stream: number): Float64Array {
  const logU = logUniforms(stream + 500);
  const z = normalDraws(stream);
  const up = k + 1;
  const middle = 1 - 1 / (9 * up);
  const width = 3 * Math.sqrt(up);
  const logs = new Float64Array(DRAWS);
  for (let i = 0; i < DRAWS; i += 1) {
    const cube = Math.max(1e-9, middle + (z[i] as number) / width);
    logs[i] = Math.log(up) + 3 * Math.log(cube) + (logU[i] as number) / k - Math.log(k);
  }
  return logs;
}
