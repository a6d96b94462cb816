/**
 * Small dense linear algebra on flat row-major Float64Arrays.
 */

/**
 * Cholesky factor in place: the lower triangle of `a` (n × n) becomes L with L Lᵀ = a. The upper triangle is left.
 * Returns false when the matrix is not positive definite.
 */
export function cholesky(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    const rowJ = j * n;
    let diagonal = a[rowJ + j]!;
    for (let k = 0; k < j; k++) diagonal -= a[rowJ + k]! * a[rowJ + k]!;
    if (!(diagonal > 0)) return false;
    const root = Math.sqrt(diagonal);
    a[rowJ + j] = root;
    const scale = 1 / root;
    for (let i = j + 1; i < n; i++) {
      const rowI = i * n;
      let s0 = 0;
      let s1 = 0;
      let k = 0;
      for (; k + 1 < j; k += 2) {
        s0 += a[rowI + k]! * a[rowJ + k]!;
        s1 += a[rowI + k + 1]! * a[rowJ + k + 1]!;
      }
      if (k < j) s0 += a[rowI + k]! * a[rowJ + k]!;
      a[rowI + j] = (a[rowI + j]! - s0 - s1) * scale;
    }
  }
  return true;
}

/** Solves L x = b in place for a lower factor. */
export function solveLower(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    let s = b[i]!;
    for (let k = 0; k < i; k++) s -= l[row + k]! * b[k]!;
    b[i] = s / l[row + i]!;
  }
}

/** Solves Lᵀ x = b in place for a lower factor. */
export function solveUpperOfLower(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    const x = b[i]! / l[row + i]!;
    b[i] = x;
    for (let k = 0; k < i; k++) b[k] = b[k]! - l[row + k]! * x;
  }
}
