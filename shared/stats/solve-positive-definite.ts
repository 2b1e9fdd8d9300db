/**
 * Solves A x = b by Cholesky's decomposition. `matrix` is A, row by row, symmetric and positive definite; a pivot that
 * rounding has driven to 0 or below is lifted to 1e-12.
 */
export function solvePositiveDefinite(matrix: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const L = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j] as number;
      for (let k = 0; k < j; k += 1) sum -= (L[i * n + k] as number) * (L[j * n + k] as number);
      L[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (L[j * n + j] as number);
    }
  }
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i += 1) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k += 1) sum -= (L[i * n + k] as number) * (x[k] as number);
    x[i] = sum / (L[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = x[i] as number;
    for (let k = i + 1; k < n; k += 1) sum -= (L[k * n + i] as number) * (x[k] as number);
    x[i] = sum / (L[i * n + i] as number);
  }
  return x;
}
