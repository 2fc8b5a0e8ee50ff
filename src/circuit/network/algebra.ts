/** Small dense linear algebra for the network: factors of a square matrix, and eigenvectors of a symmetric one. */

/** A square matrix by rows. */
export type Matrix = readonly Float64Array[];

/** Solves A·x = b for one A and many b. */
export interface Factors {
  readonly solve: (b: Float64Array) => Float64Array;
}

/** LU factors with partial pivoting (Doolittle); null when the matrix is singular. Destroys its argument. */
export function factorsOf(a: Float64Array[]): Factors | null {
  const n = a.length;
  const order = Array.from({ length: n }, (_, i) => i);
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let r = column + 1; r < n; r++) if (Math.abs(a[r]![column]!) > Math.abs(a[best]![column]!)) best = r;
    if (!(Math.abs(a[best]![column]!) > 1e-30)) return null;
    if (best !== column) {
      [a[column], a[best]] = [a[best]!, a[column]!];
      [order[column], order[best]] = [order[best]!, order[column]!];
    }
    const pivot = a[column]!;
    for (let r = column + 1; r < n; r++) {
      const row = a[r]!;
      const share = row[column]! / pivot[column]!;
      if (share === 0) continue;
      row[column] = share;
      for (let c = column + 1; c < n; c++) row[c]! -= share * pivot[c]!;
    }
  }
  return {
    solve(b) {
      const x = new Float64Array(n);
      for (let r = 0; r < n; r++) {
        const row = a[r]!;
        let sum = b[order[r]!]!;
        for (let c = 0; c < r; c++) sum -= row[c]! * x[c]!;
        x[r] = sum;
      }
      for (let r = n - 1; r >= 0; r--) {
        const row = a[r]!;
        let sum = x[r]!;
        for (let c = r + 1; c < n; c++) sum -= row[c]! * x[c]!;
        x[r] = sum / row[r]!;
      }
      return x;
    },
  };
}

/** Eigenvalues and eigenvectors (by columns) of a symmetric matrix: Jacobi's rotations. Destroys its argument. */
export function eigenOf(a: Float64Array[]): { readonly values: Float64Array; readonly vectors: Matrix } {
  const n = a.length;
  const vectors = Array.from({ length: n }, (_, i) => {
    const row = new Float64Array(n);
    row[i] = 1;
    return row;
  });
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) off = Math.max(off, a[p]![q]! ** 2 / Math.abs(a[p]![p]! * a[q]![q]!));
    // Relative to its own two diagonals: modes lie ten decades apart, and the slow ones count most.
    if (!(off > 1e-26)) break;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, vectors, p, q);
  }
  return { values: Float64Array.from(a, (row, i) => row[i]!), vectors };
}

function rotate(a: Float64Array[], vectors: readonly Float64Array[], p: number, q: number): void {
  const apq = a[p]![q]!;
  if (apq === 0) return;
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * apq);
  const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  const n = a.length;
  for (let k = 0; k < n; k++) {
    const [akp, akq] = [a[k]![p]!, a[k]![q]!];
    a[k]![p] = c * akp - s * akq;
    a[k]![q] = s * akp + c * akq;
  }
  for (let k = 0; k < n; k++) {
    const [apk, aqk] = [a[p]![k]!, a[q]![k]!];
    a[p]![k] = c * apk - s * aqk;
    a[q]![k] = s * apk + c * aqk;
  }
  for (const row of vectors) {
    const [vp, vq] = [row[p]!, row[q]!];
    row[p] = c * vp - s * vq;
    row[q] = s * vp + c * vq;
  }
}
