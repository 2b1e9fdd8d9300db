/** A function's value at a point; its gradient is written into `gradient`. */
export type Objective = (point: Float64Array, gradient: Float64Array) => number;

const MEMORY = 8;

/**
 * Minimises a smooth convex function by the limited-memory quasi-Newton method with backtracking (D. C. Liu &
 * J. Nocedal, Mathematical Programming 45 (1989), 503-528). Stops after `rounds` or when a round gains less than `gain`.
 * @returns the best point found; `start` is left as it was
 */
export function minimise(objective: Objective, start: Float64Array, { rounds = 200, gain = 1e-4 } = {}): Float64Array {
  let point = Float64Array.from(start);
  let gradient = new Float64Array(point.length);
  let value = objective(point, gradient);
  const memory: Pair[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const direction = descent(gradient, memory);
    const slope = dot(direction, gradient);
    if (!(slope < 0)) break;
    let scale = round === 0 ? 1 / Math.max(1, Math.sqrt(-slope)) : 1;
    const next = new Float64Array(point.length);
    const nextGradient = new Float64Array(point.length);
    let nextValue = Number.POSITIVE_INFINITY;
    for (; scale > 1e-10; scale /= 2) {
      for (let i = 0; i < next.length; i += 1) next[i] = (point[i] as number) + scale * (direction[i] as number);
      nextValue = objective(next, nextGradient);
      if (nextValue <= value + 1e-4 * scale * slope) break;
    }
    if (!(nextValue < value)) break;
    const step = next.map((x, i) => x - (point[i] as number));
    const change = nextGradient.map((g, i) => g - (gradient[i] as number));
    const curvature = dot(step, change);
    if (curvature > 1e-12) memory.push({ step, change, curvature });
    if (memory.length > MEMORY) memory.shift();
    const gained = value - nextValue;
    [point, gradient, value] = [next, nextGradient, nextValue];
    if (gained < gain) break;
  }
  return point;
}

type Pair = { step: Float64Array; change: Float64Array; curvature: number };

/** The two-loop recursion: minus the approximate inverse curvature times the gradient. */
function descent(gradient: Float64Array, memory: readonly Pair[]): Float64Array {
  const direction = gradient.map((g) => -g);
  const along: number[] = [];
  for (let k = memory.length - 1; k >= 0; k -= 1) {
    const { step, change, curvature } = memory[k] as Pair;
    along[k] = dot(step, direction) / curvature;
    addScaled(direction, change, -(along[k] as number));
  }
  const last = memory[memory.length - 1];
  if (last !== undefined) {
    const scale = last.curvature / dot(last.change, last.change);
    for (let i = 0; i < direction.length; i += 1) direction[i] = (direction[i] as number) * scale;
  }
  memory.forEach(({ step, change, curvature }, k) => {
    addScaled(direction, step, (along[k] as number) - dot(change, direction) / curvature);
  });
  return direction;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function addScaled(into: Float64Array, vector: Float64Array, factor: number): void {
  for (let i = 0; i < into.length; i += 1) into[i] = (into[i] as number) + factor * (vector[i] as number);
}
