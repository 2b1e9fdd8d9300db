/**
 * The value of the weighted sample at which the weights of it and all smaller values first reach `target`: found by
 * partitioning, without sorting (C. A. R. Hoare, "Algorithm 65: find", Communications of the ACM 4, 1961). Rearranges both arrays.
 * @param weights of the values, not negative; `target` at most their sum, bar rounding
 */
export function weightedQuantile(values: Float64Array, weights: Float64Array, target: number): number {
  let low = 0;
  let high = values.length - 1;
  let below = 0;
  while (low < high) {
    const pivot = values[(low + high) >>> 1] as number;
    // Smaller values go to the front, larger ones to the back, those like the pivot stay between.
    let front = low;
    let back = high;
    let smaller = 0;
    let same = 0;
    for (let at = low; at <= back; ) {
      const value = values[at] as number;
      const weight = weights[at] as number;
      if (value > pivot) {
        swap(values, weights, at, back);
        back -= 1;
      } else {
        if (value < pivot) {
          swap(values, weights, at, front);
          front += 1;
          smaller += weight;
        } else same += weight;
        at += 1;
      }
    }
    if (below + smaller >= target) high = front - 1;
    else if (below + smaller + same >= target || back === high) return pivot;
    else {
      below += smaller + same;
      low = back + 1;
    }
  }
  return values[low] as number;
}

function swap(values: Float64Array, weights: Float64Array, a: number, b: number): void {
  const value = values[a] as number;
  const weight = weights[a] as number;
  values[a] = values[b] as number;
  weights[a] = weights[b] as number;
  values[b] = value;
  weights[b] = weight;
}
