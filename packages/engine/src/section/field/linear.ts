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

/**
 * Eigenvalues and vectors of a symmetric matrix by cyclic Jacobi rotations (Golub & Van Loan, Matrix Computations,
 * section 8.5). Sorted by falling eigenvalue; vector k is row k of `vectors`.
 */
export function symmetricEigen(
  matrix: Float64Array,
  n: number,
): { values: Float64Array; vectors: Float64Array } {
  const a = Float64Array.from(matrix);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  for (let sweep = 0; sweep < 30; sweep++) {
    let off = 0;
    let all = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const q = a[i * n + j]! ** 2;
        all += q;
        if (i !== j) off += q;
      }
    }
    if (off <= 1e-22 * all) break;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) {
        const apq = a[p * n + q]!;
        if (Math.abs(apq) < 1e-300) continue;
        const theta = (a[q * n + q]! - a[p * n + p]!) / (2 * apq);
        const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const akp = a[k * n + p]!;
          const akq = a[k * n + q]!;
          a[k * n + p] = c * akp - s * akq;
          a[k * n + q] = s * akp + c * akq;
        }
        for (let k = 0; k < n; k++) {
          const apk = a[p * n + k]!;
          const aqk = a[q * n + k]!;
          a[p * n + k] = c * apk - s * aqk;
          a[q * n + k] = s * apk + c * aqk;
          const vpk = v[p * n + k]!;
          const vqk = v[q * n + k]!;
          v[p * n + k] = c * vpk - s * vqk;
          v[q * n + k] = s * vpk + c * vqk;
        }
      }
    }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => a[j * n + j]! - a[i * n + i]!);
  const values = new Float64Array(n);
  const vectors = new Float64Array(n * n);
  order.forEach((from, to) => {
    values[to] = a[from * n + from]!;
    for (let k = 0; k < n; k++) vectors[to * n + k] = v[from * n + k]!;
  });
  return { values, vectors };
}
